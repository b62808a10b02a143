import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { Area, Field, FieldFault, Form, Tick } from '../../web/components/form.js';
import { ProblemNote } from '../../web/components/problem-note.js';
import { page } from '../../web/page.js';
import { dayOfWeek, WEEKDAYS } from '../../web/sentences/weekday.js';
import { count, listed } from '../../web/sentences/words.js';
import { holidayLines } from './holiday-lines.js';
import type { StoreReminderRule } from './reminder-rules.service.js';
import type { RuleExample } from './rule-example.js';

/** What was typed, to show it again beside what is wrong with it. */
export interface TypedRule {
  readonly form: Readonly<Record<string, unknown>>;
  readonly problem: Problem;
}

interface ReminderRulePage extends Partial<TypedRule> {
  readonly me: Actor;
  readonly store: StoreView;
  readonly rule: StoreReminderRule;
  readonly example: RuleExample;
}

/** When a store works and how early it wants to hear of what falls due. */
export function reminderRulePage({ me, store, rule, example, form, problem }: ReminderRulePage): string {
  const values = form ?? shown(rule);
  return page(
    { title: `Reminders at ${store.name}`, actor: me, path: `/stores/${store.id}/reminders` },
    <>
      <p class="crumbs">
        <a href="/stores">Stores</a> / <a href={`/stores/${store.id}`}>{store.name}</a>
      </p>
      <h1>Reminders at {store.name}</h1>
      <p class="lede">
        When this store works, and how early its people want to hear of what falls due.{' '}
        {rule.version === 0 ? 'Nobody has set this yet: it goes by common practice.' : null}
      </p>
      <ProblemNote problem={problem} />
      <div class="two-columns">
        <RuleForm storeId={store.id} version={rule.version} values={values} problem={problem} />
        <Example example={example} rule={rule} />
      </div>
    </>,
  );
}

function shown({ workDays, holidays, leadDays, digestTime }: StoreReminderRule): Record<string, unknown> {
  return {
    workDays: workDays.map(String),
    holidays: holidayLines(holidays),
    leadDays: leadDays.join(', '),
    digestTime,
  };
}

function RuleForm({
  storeId,
  version,
  values,
  problem,
}: {
  storeId: number;
  version: number;
  values: Readonly<Record<string, unknown>>;
  problem: Problem | undefined;
}) {
  const value = (name: string) => (typeof values[name] === 'string' ? values[name] : '');
  const ticked: readonly unknown[] = Array.isArray(values['workDays']) ? values['workDays'] : [];
  return (
    <section class="sheet">
      <Form action={`/stores/${storeId}/reminders`} label="When this store is reminded">
        <input type="hidden" name="version" value={String(version)} />
        <fieldset>
          <legend>Working days</legend>
          {WEEKDAYS.map((name, index) => (
            <Tick
              key={name}
              name="workDays[]"
              value={String(index + 1)}
              label={name}
              ticked={ticked.includes(String(index + 1))}
            />
          ))}
          <FieldFault name="workDays" problem={problem} />
        </fieldset>
        <Area
          label="Days on which it is closed all the same"
          name="holidays"
          rows={6}
          value={value('holidays')}
          hint="One to a line, as 2026-12-25, or a range as 2026-12-24 to 2027-01-01."
          problem={problem}
        />
        <Field
          label="Told so many days before"
          name="leadDays"
          value={value('leadDays')}
          hint="Lead times in days, such as 30, 14, 7, 1. Each reminds once."
          required
          problem={problem}
        />
        <Field
          label="Time of the daily mail"
          name="digestTime"
          size="short"
          value={value('digestTime')}
          hint="By the clock of the store, such as 06:00."
          required
          problem={problem}
        />
        <button type="submit">Save</button>
      </Form>
    </section>
  );
}

function Example({ example, rule }: { example: RuleExample; rule: StoreReminderRule }) {
  return (
    <section class="note">
      <h2>What that comes to</h2>
      <p>An item that is due on {dayOfWeek(example.dueOn)} is told on</p>
      <ul>
        {example.days.map(({ on, leadDays }) => (
          <li key={on}>
            <strong>{dayOfWeek(on)}</strong>, {listed(leadDays.map((days) => count(days, 'day', 'days')))}{' '}
            before
          </li>
        ))}
      </ul>
      <p>
        A lead time that ends on a day when the store is closed moves to the working day before. Once an item
        is overdue it is told every working day, and every day while it is out on a job, to whoever chose
        daily mail.
      </p>
      <p class="faded">The mail is made at {rule.digestTime}. This is the rule as it is saved.</p>
    </section>
  );
}
