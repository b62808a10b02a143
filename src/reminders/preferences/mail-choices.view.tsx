import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import { DIGEST_CHOICES } from '../../rules/reminders/digest-choice.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { Field, FieldFault, Form, Pick, Tick } from '../../web/components/form.js';
import { ProblemNote } from '../../web/components/problem-note.js';
import { page } from '../../web/page.js';
import { DIGEST_NAMES, mailSentences, urgentMatters } from '../../web/sentences/mail-words.js';
import { chosenMail } from './chosen-mail.js';
import { MailWarningNotes } from './mail-notes.view.js';
import { isInCharge, isToldOfDue, type MailPerson } from './mail-person.js';
import type { MailWarning } from './mail-warnings.js';

/** What was typed, to show it again beside what is wrong with it. */
export interface TypedChoice {
  readonly form: Readonly<Record<string, unknown>>;
  readonly problem: Problem;
}

interface MailChoicePage extends Partial<TypedChoice> {
  readonly me: Actor;
  readonly person: MailPerson;
  readonly stores: readonly StoreView[];
  readonly warnings: readonly MailWarning[];
}

/** What a person hears by mail: one's own, or for a manager anybody's. */
export function mailChoicePage({ me, person, stores, warnings, form, problem }: MailChoicePage): string {
  const isOwn = me.id === person.personId;
  const path = isOwn ? '/me/mail' : `/people/${person.personId}/mail`;
  const title = isOwn ? 'Your mail' : `Mail of ${person.name}`;
  return page(
    { title, actor: me, path },
    <>
      {isOwn ? null : (
        <p class="crumbs">
          <a href="/people">People</a> / <a href="/people/mail">Who gets mail</a>
        </p>
      )}
      <h1>{title}</h1>
      <MailWarningNotes warnings={warnings} />
      <ProblemNote problem={problem} />
      <div class="two-columns">
        <ChoiceForm
          person={person}
          stores={stores}
          path={path}
          values={form ?? shown(person)}
          problem={problem}
        />
        <div>
          <Outcome person={person} stores={stores} isOwn={isOwn} />
          <AlwaysTold />
        </div>
      </div>
    </>,
  );
}

function shown({ address, digest, urgent, storeIds }: MailPerson): Record<string, unknown> {
  return {
    address: address ?? '',
    digest,
    urgent: String(urgent),
    stores: storeIds === null ? 'all' : 'some',
    storeIds: (storeIds ?? []).map(String),
  };
}

function ChoiceForm({
  person,
  stores,
  path,
  values,
  problem,
}: {
  person: MailPerson;
  stores: readonly StoreView[];
  path: string;
  values: Readonly<Record<string, unknown>>;
  problem: Problem | undefined;
}) {
  const value = (name: string) => (typeof values[name] === 'string' ? values[name] : '');
  return (
    <section class="sheet">
      <Form action={path} label="What is told by mail">
        <input type="hidden" name="version" value={String(person.version)} />
        <Field
          label="Mail address"
          name="address"
          type="email"
          value={value('address')}
          hint="One address and nothing beside it. Leave it blank for no mail."
          autocomplete={path === '/me/mail' ? 'email' : 'off'}
          problem={problem}
        />
        {isToldOfDue(person.roles) ? (
          <fieldset class="tick-list">
            <legend>What falls due</legend>
            {DIGEST_CHOICES.map((choice) => (
              <Pick
                key={choice}
                name="digest"
                value={choice}
                label={DIGEST_NAMES[choice]}
                picked={value('digest') === choice}
              />
            ))}
            <FieldFault name="digest" problem={problem} />
          </fieldset>
        ) : null}
        <fieldset class="tick-list">
          <legend>At once</legend>
          <Tick
            label={capital(urgentMatters(isInCharge(person.roles)))}
            name="urgent"
            ticked={value('urgent') === 'true'}
          />
        </fieldset>
        {stores.length > 1 || person.storeIds !== null ? (
          <StorePicks stores={stores} values={values} problem={problem} />
        ) : null}
        <button type="submit">Save</button>
      </Form>
    </section>
  );
}

function StorePicks({
  stores,
  values,
  problem,
}: {
  stores: readonly StoreView[];
  values: Readonly<Record<string, unknown>>;
  problem: Problem | undefined;
}) {
  const ticked: readonly unknown[] = Array.isArray(values['storeIds']) ? values['storeIds'] : [];
  return (
    <fieldset class="tick-list">
      <legend>Of which stores</legend>
      <Pick
        name="stores"
        value="all"
        label="Every store, also those still to come"
        picked={values['stores'] === 'all'}
      />
      <Pick name="stores" value="some" label="Only these:" picked={values['stores'] === 'some'} />
      <div class="indented">
        {stores.map(({ id, name }) => (
          <Tick
            key={id}
            name="storeIds[]"
            value={String(id)}
            label={name}
            ticked={ticked.includes(String(id))}
          />
        ))}
      </div>
      <FieldFault name="storeIds" problem={problem} />
    </fieldset>
  );
}

function Outcome({
  person,
  stores,
  isOwn,
}: {
  person: MailPerson;
  stores: readonly StoreView[];
  isOwn: boolean;
}) {
  return (
    <section class="note">
      <h2>{isOwn ? 'What you get' : `What ${person.name} gets`}</h2>
      {person.address === null ? null : <p>Address: {person.address}</p>}
      {mailSentences(chosenMail(person, stores)).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {person.active ? null : <p>The account is closed: nothing is sent.</p>}
      {isToldOfDue(person.roles) ? null : (
        <p class="faded">
          What falls due is told to storemen, competent persons and managers. Crew may hear of dangers.
        </p>
      )}
      <p class="faded">With nothing to say, no mail is sent.</p>
    </section>
  );
}

function AlwaysTold() {
  return (
    <section class="note">
      <h2>What cannot be switched off</h2>
      <p>
        Overdue gear at a store always has at least one person who hears of it, since gear that nobody is told
        of goes on being used. Whoever is the last to hear of a store is asked to find someone else first.
        Mail once a week counts, though it may come a week late: where nobody hears sooner, this page says so.
      </p>
      <p>
        Where that comes about otherwise, as when an account is closed, every manager with an address hears of
        the overdue gear of that store, whatever they chose. The same goes for urgent mail where no storeman
        or manager chose it.
      </p>
    </section>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
