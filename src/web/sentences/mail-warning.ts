import type { MailWarning } from '../../reminders/preferences/mail-warnings.js';
import { count, listed } from './words.js';

/** What keeps overdue gear from being told, and what to do about it. */
export function mailWarning(warning: MailWarning): string {
  switch (warning.code) {
    case 'noMailServer':
      return 'No mail server is set: reminders stand in the due diary only.';
    case 'nobodyTold': {
      const where = listed(warning.storeNames);
      return `Nobody is told of overdue gear at ${where}: give a manager a mail address.`;
    }
    case 'givenUp':
      return `${count(warning.mails, 'mail was', 'mails were')} given up in the last week: whoever it was for was not told. The page Outbox says why.`;
    case 'toldWeekly': {
      const where = listed(warning.storeNames);
      return `Whoever hears of overdue gear at ${where} does so once a week only: gear may be overdue for a week before anybody is told. Ask one of them to choose daily mail, or only what is overdue.`;
    }
    case 'toldByDefault': {
      const where = listed(warning.storeNames);
      return `Nobody chose to hear of overdue gear at ${where}: managers hear of it whatever they chose. Ask a storeman, manager or competent person to choose mail of ${where}.`;
    }
  }
}
