import { CreateTackleroom1795564800000 } from './1795564800000-create-tackleroom.js';
import { HeavyLift1795608000000 } from './1795608000000-heavy-lift.js';
import { SiteChecks1795611600000 } from './1795611600000-site-checks.js';
import { TagLookAlikes1795626000000 } from './1795626000000-tag-look-alikes.js';
import { Reminders1795629600000 } from './1795629600000-reminders.js';
import { DefectsStand1795633200000 } from './1795633200000-defects-stand.js';
import { DueSince1795636800000 } from './1795636800000-due-since.js';

/** The history of the database, oldest first. A migration that has landed is never edited. */
export const migrations = [
  CreateTackleroom1795564800000,
  HeavyLift1795608000000,
  SiteChecks1795611600000,
  TagLookAlikes1795626000000,
  Reminders1795629600000,
  DefectsStand1795633200000,
  DueSince1795636800000,
];
