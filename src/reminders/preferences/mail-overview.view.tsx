import type { Actor } from '../../people/actor.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { Scroll } from '../../web/components/scroll.js';
import { page } from '../../web/page.js';
import { mailSentences } from '../../web/sentences/mail-words.js';
import { chosenMail } from './chosen-mail.js';
import { MailWarningNotes } from './mail-notes.view.js';
import type { MailPerson } from './mail-person.js';
import type { MailWarning } from './mail-warnings.js';

/** Who gets mail, and what they chose. */
export function mailOverviewPage({
  me,
  people,
  stores,
  warnings,
}: {
  me: Actor;
  people: readonly MailPerson[];
  stores: readonly StoreView[];
  warnings: readonly MailWarning[];
}): string {
  return page(
    { title: 'Who gets mail', actor: me, path: '/people/mail' },
    <>
      <p class="crumbs">
        <a href="/people">People</a>
      </p>
      <h1>Who gets mail</h1>
      <MailWarningNotes warnings={warnings} />
      <p>
        <a href="/outbox">What waits in the outbox, and what was given up</a>
      </p>
      <Scroll label="Who gets mail">
        <table class="stacked">
          <caption>What each person is told by mail</caption>
          <thead>
            <tr>
              <th scope="col">Who</th>
              <th scope="col">Address</th>
              <th scope="col">Gets</th>
            </tr>
          </thead>
          <tbody>
            {people
              .filter(({ active }) => active)
              .map((person) => (
                <Row key={person.personId} person={person} stores={stores} />
              ))}
          </tbody>
        </table>
      </Scroll>
    </>,
  );
}

function Row({ person, stores }: { person: MailPerson; stores: readonly StoreView[] }) {
  return (
    <tr>
      <th scope="row">
        <a href={`/people/${person.personId}/mail`}>{person.name}</a>
      </th>
      <td data-label="Address">{person.address ?? 'none yet'}</td>
      <td data-label="Gets" class="whole">
        {mailSentences(chosenMail(person, stores)).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </td>
    </tr>
  );
}
