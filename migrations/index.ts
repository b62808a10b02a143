import { CreateTackleroom1795564800000 } from './1795564800000-create-tackleroom.js';

/** The history of the database, oldest first. A migration that has landed is never edited. */
export const migrations = [CreateTackleroom1795564800000];
