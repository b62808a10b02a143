import type { DigestChoice } from '../../rules/reminders/digest-choice.js';
import { listed } from './words.js';

/** How much of what falls due is told, as a choice. */
export const DIGEST_NAMES: Readonly<Record<DigestChoice, string>> = {
  daily: 'Every day on which there is something to say',
  weekly: 'Once a week, on its first working day',
  overdueOnly: 'Only what is overdue',
  none: 'Nothing of what falls due',
};

/** What somebody chose, as far as it decides what they are told. */
export interface ChosenMail {
  readonly hasAddress: boolean;
  readonly digest: DigestChoice;
  readonly urgent: boolean;
  /** The names of the stores chosen; null for all. */
  readonly storeNames: readonly string[] | null;
  /** False of crew, who are told of dangers only. */
  readonly isToldOfDue: boolean;
  /** True of those who keep or run the stores: booked gear that is no longer fit is for them to mend. */
  readonly isInCharge: boolean;
}

/** What these choices come to, in plain words. */
export function mailSentences(chosen: ChosenMail): string[] {
  const { hasAddress, urgent, storeNames, isInCharge } = chosen;
  if (!hasAddress) return ['No mail, as there is no address to send it to.'];
  const digest = digestSentence(chosen);
  const where = storeNames === null ? 'every store' : listed(storeNames);
  return [
    ...(digest === undefined && !urgent ? ['No mail is chosen.'] : []),
    ...(digest === undefined ? [] : [`${digest} at ${where}.`]),
    ...(urgent ? [`At once: ${urgentMatters(isInCharge)}, at ${where}.`] : []),
  ];
}

/** What is told at once, by whether one keeps or runs the stores. */
export function urgentMatters(isInCharge: boolean): string {
  return isInCharge ? 'dangers found, and booked gear that is no longer fit' : 'dangers found';
}

function digestSentence({ digest, isToldOfDue }: ChosenMail): string | undefined {
  if (!isToldOfDue) return undefined;
  switch (digest) {
    case 'daily':
      return 'One mail a day at most, of what falls due and what is overdue';
    case 'weekly':
      return 'One mail a week at most, of what falls due and what is overdue';
    case 'overdueOnly':
      return 'One mail a day at most, of what is overdue';
    case 'none':
      return undefined;
  }
}
