import { StateMark } from '../../web/components/state-mark.js';
import { mailWarning } from '../../web/sentences/mail-warning.js';
import type { MailWarning } from './mail-warnings.js';

/** What keeps overdue gear from being told as it should, above a page that has to do with it. */
export function MailWarningNotes({ warnings }: { warnings: readonly MailWarning[] }) {
  if (warnings.length === 0) return null;
  return (
    <div class="note note-due">
      <p class="note-title">
        <StateMark state="due" word="Reminders by mail" />
      </p>
      {warnings.map((warning) => (
        <p key={warning.code}>{mailWarning(warning)}</p>
      ))}
    </div>
  );
}

/** Asks somebody for an address who has not said yet whether they want mail. */
export function AddressNote() {
  return (
    <p class="note">
      <a href="/me/mail">Give an address</a> to be told when inspections fall due.
    </p>
  );
}
