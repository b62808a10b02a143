import { migrations } from '../migrations/index.js';
import { BookedItemEntity } from './custody/booked-item.entity.js';
import { DefectEntity } from './inspections/defect.entity.js';
import { GearEventEntity } from './inspections/gear-event.entity.js';
import { InspectionEntity } from './inspections/inspection.entity.js';
import { CalculationSheetEntity } from './jobs/calculation/calculation-sheet.entity.js';
import { JobEntity } from './jobs/job.entity.js';
import { LedgerEntryEntity, LedgerHeadEntity } from './ledger/ledger.entity.js';
import { RequestClaimEntity } from './ledger/request-claim.entity.js';
import { PersonEntity } from './people/person.entity.js';
import { SessionEntity } from './people/session.entity.js';
import { ImportMappingEntity } from './register/import-mapping.entity.js';
import { ItemEntity } from './register/item.entity.js';
import { UploadEntity } from './register/upload.entity.js';
import { PreUseCheckEntity } from './checks/pre-use-check.entity.js';
import { LiftCountEntity } from './custody/lift-count.entity.js';
import { DocumentEntity } from './documents/document.entity.js';
import { ExaminationReportEntity } from './inspections/examination-report.entity.js';
import { NoticeEntity } from './notices/notice.entity.js';
import { CalendarDayEntity } from './reminders/due-index/calendar-day.entity.js';
import { DueDayEntity } from './reminders/due-index/due-day.entity.js';
import { DueSchemeEntity } from './reminders/due-index/due-scheme.entity.js';
import { DueStaleEntity } from './reminders/due-index/due-stale.entity.js';
import { CalendarFeedEntity } from './reminders/feed/calendar-feed.entity.js';
import { DigestRunEntity } from './reminders/digest/digest-run.entity.js';
import { MailEntity } from './reminders/outbox/mail.entity.js';
import { MailChoiceEntity } from './reminders/preferences/mail-choice.entity.js';
import { ReminderRuleEntity } from './reminders/preferences/reminder-rule.entity.js';
import { ToldFlagEntity } from './reminders/urgent/told-flag.entity.js';
import type { Schema } from './storage/open-storage.js';
import { StoreEntity } from './stores/store.entity.js';

/** Every table and every migration, by name: nothing is found by a file pattern. */
export const SCHEMA: Schema = {
  entities: [
    NoticeEntity,
    ExaminationReportEntity,
    DocumentEntity,
    LiftCountEntity,
    PreUseCheckEntity,
    BookedItemEntity,
    CalculationSheetEntity,
    DefectEntity,
    GearEventEntity,
    ImportMappingEntity,
    InspectionEntity,
    ItemEntity,
    JobEntity,
    LedgerEntryEntity,
    LedgerHeadEntity,
    PersonEntity,
    RequestClaimEntity,
    SessionEntity,
    StoreEntity,
    UploadEntity,
    CalendarDayEntity,
    DueDayEntity,
    DueSchemeEntity,
    DueStaleEntity,
    CalendarFeedEntity,
    DigestRunEntity,
    MailEntity,
    MailChoiceEntity,
    ReminderRuleEntity,
    ToldFlagEntity,
  ],
  migrations,
};
