import { Field, Form, Tick } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import type { Problem } from '../problem.js';
import type { Actor } from './actor.js';
import type { DemoAccount } from './demo-accounts.js';
import type { PersonView } from './people.dto.js';
import { ROLES, type Role } from './role.js';

/** What was typed, to show it again beside what is wrong with it. */
interface Typed {
  readonly form?: Readonly<Record<string, unknown>>;
  readonly problem?: Problem;
}

export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  storeman: 'Storeman',
  crew: 'Crew',
  competentPerson: 'Competent person',
  manager: 'Manager',
};

/** The page that makes the first account. */
export function firstRunPage({ form = {}, problem }: Typed): string {
  return page(
    { title: 'First run', actor: undefined, path: '/first-run' },
    <section class="sheet narrow">
      <h1>Make the first account</h1>
      <p>Nobody can sign in yet. Type the setup code that the server printed when it started.</p>
      <ProblemNote problem={problem} />
      <Form action="/first-run">
        <Field
          label="Setup code"
          name="setupCode"
          value={text(form['setupCode'])}
          required
          problem={problem}
        />
        <Field
          label="Your name"
          name="name"
          value={text(form['name'])}
          required
          autocomplete="name"
          problem={problem}
        />
        <Field
          label="Sign-in name"
          name="signInName"
          value={text(form['signInName'])}
          required
          autocomplete="username"
          problem={problem}
        />
        <Field
          label="Password"
          name="password"
          type="password"
          hint="At least 12 characters; several words make a good one."
          required
          autocomplete="new-password"
          problem={problem}
        />
        <button type="submit">Make the account and sign in</button>
      </Form>
    </section>,
  );
}

/** The page one signs in on. */
export function signInPage({
  then,
  form = {},
  problem,
  demo,
}: Typed & { then: string; demo: readonly DemoAccount[] }): string {
  return page(
    { title: 'Sign in', actor: undefined, path: '/sign-in' },
    <section class="sheet narrow">
      <h1>Sign in</h1>
      <ProblemNote problem={problem} />
      <Form action={`/sign-in?then=${encodeURIComponent(then)}`}>
        <Field
          label="Sign-in name"
          name="signInName"
          value={text(form['signInName'])}
          required
          autocomplete="username"
          problem={problem}
        />
        <Field
          label="Password"
          name="password"
          type="password"
          required
          autocomplete="current-password"
          problem={problem}
        />
        <button type="submit">Sign in</button>
      </Form>
      {demo.length > 0 ? <DemoList demo={demo} /> : null}
    </section>,
  );
}

function DemoList({ demo }: { demo: readonly DemoAccount[] }) {
  return (
    <aside class="note">
      <p class="note-title">This is the demo. Everything in it is invented. Sign in as:</p>
      <dl class="pairs">
        {demo.map(({ name, signInName, password, roles }) => (
          <div key={signInName}>
            <dt>
              {name}, {roles.map((role) => ROLE_NAMES[role].toLowerCase()).join(' and ')}
            </dt>
            <dd>
              <code>{signInName}</code> with <code>{password}</code>
            </dd>
          </div>
        ))}
      </dl>
    </aside>
  );
}

/** Every account, and the form for a new one. */
export function peoplePage({
  me,
  people,
  form = {},
  problem,
}: Typed & { me: Actor; people: readonly PersonView[] }): string {
  return page(
    { title: 'People', actor: me, path: '/people' },
    <>
      <h1>People</h1>
      <p>
        <a href="/people/mail">Who gets mail</a>
      </p>
      <ProblemNote problem={problem} />
      <ul class="cards">
        {people.map((person) => (
          <PersonCard key={person.id} person={person} />
        ))}
      </ul>
      <section class="sheet">
        <h2>A new account</h2>
        <Form action="/people">
          <div class="fields">
            <Field label="Name" name="name" value={text(form['name'])} required problem={problem} />
            <Field
              label="Sign-in name"
              name="signInName"
              value={text(form['signInName'])}
              required
              problem={problem}
            />
            <Field
              label="First password"
              name="password"
              type="password"
              hint="At least 12 characters. Hand it over in person."
              required
              autocomplete="new-password"
              problem={problem}
            />
          </div>
          <RoleTicks ticked={[]} />
          <button type="submit">Make the account</button>
        </Form>
      </section>
    </>,
  );
}

function PersonCard({ person }: { person: PersonView }) {
  return (
    <li class="card">
      <h2>
        {person.name} {person.active ? null : <span class="state state-refused">✕ closed</span>}
      </h2>
      <p>
        Signs in as <code>{person.signInName}</code>.{' '}
        <a href={`/people/${person.id}/mail`}>Mail of {person.name}</a>
      </p>
      <Form action={`/people/${person.id}`} label={`Change the account of ${person.name}`}>
        <RoleTicks ticked={person.roles} />
        <Tick label="May sign in" name="active" ticked={person.active} />
        <button type="submit" class="quiet">
          Save
        </button>
      </Form>
    </li>
  );
}

function RoleTicks({ ticked }: { ticked: readonly Role[] }) {
  return (
    <fieldset>
      <legend>Roles</legend>
      {ROLES.map((role) => (
        <Tick
          key={role}
          name="roles[]"
          value={role}
          label={ROLE_NAMES[role]}
          ticked={ticked.includes(role)}
        />
      ))}
    </fieldset>
  );
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
