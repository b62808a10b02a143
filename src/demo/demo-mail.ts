import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { SYSTEM_ACTOR } from '../people/actor.js';
import type { DigestChoice } from '../rules/reminders/digest-choice.js';
import { MailChoices } from '../reminders/preferences/mail-choices.service.js';
import { ReminderSchedule } from '../reminders/schedule/reminder-schedule.service.js';

/** What the people of the demo chose to hear, by sign-in name. */
const CHOICES: Readonly<Record<string, { digest: DigestChoice; urgent: boolean }>> = {
  ines: { digest: 'daily', urgent: true },
  tomas: { digest: 'none', urgent: false },
  agnes: { digest: 'daily', urgent: false },
  piet: { digest: 'weekly', urgent: true },
};

/** Gives the people of the demo an invented address each and what they chose to hear, and sends them their mail. */
@Injectable()
export class DemoMail {
  constructor(
    private readonly choices: MailChoices,
    private readonly schedule: ReminderSchedule,
    private readonly clock: Clock,
  ) {}

  /** Chooses for a person of the demo who has not chosen yet. */
  async choose(personId: number, signInName: string): Promise<void> {
    const address = `${signInName}@larkmoor-panels.example`;
    const input = { address, ...CHOICES[signInName] };
    await this.choices.change(SYSTEM_ACTOR, personId, { version: 0, input });
  }
  /** Looks at an instant of the scenario, or now, what has to be told, and puts it in the local mailbox. */
  look(instant = this.clock.now()): Promise<void> {
    return this.clock.at(instant, () => this.schedule.tick());
  }
}
