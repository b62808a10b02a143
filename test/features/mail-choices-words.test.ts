import { describe, expect, it } from 'vitest';
import { chosenMail } from '../../src/reminders/preferences/chosen-mail.js';
import { mailPerson } from '../../src/reminders/preferences/mail-person.js';
import { mailWarnings } from '../../src/reminders/preferences/mail-warnings.js';
import type { Role } from '../../src/people/role.js';
import { mailWarning } from '../../src/web/sentences/mail-warning.js';
import { mailSentences } from '../../src/web/sentences/mail-words.js';

const STORES = [
  { id: 1, name: 'Quayside store' },
  { id: 2, name: 'Brickfield yard' },
];

/** Somebody with an address who hears of every store each day, with these differences. */
function someone(personId: number, roles: Role[], differences: object = {}) {
  const account = { id: personId, name: 'Ines', signInName: 'ines', roles, active: true };
  const choice = { personId, digest: 'daily', urgent: true, storeIds: null, version: 1 } as const;
  const row = { ...choice, address: 'ines@yard.example' };
  return { ...mailPerson(account, row), ...differences };
}

describe('warnings about mail', () => {
  const warnings = (people: ReturnType<typeof someone>[], { isOpen = true, givenUp = 0 } = {}) =>
    mailWarnings({ isOpen, stores: STORES, people, givenUp }).map(mailWarning);

  it('are none where every store is heard of by choice', () => {
    expect(warnings([someone(1, ['storeman'])])).toEqual([]);
    expect(
      warnings([someone(1, ['storeman'], { storeIds: [1] }), someone(2, ['manager'], { storeIds: [2] })]),
    ).toEqual([]);
  });

  it('count the mails that were given up', () => {
    const of = (givenUp: number) => warnings([someone(1, ['storeman'])], { givenUp });
    expect(of(1)).toEqual([expect.stringMatching(/^1 mail was given up in the last week: .* Outbox/)]);
    expect(of(3)).toEqual([expect.stringMatching(/^3 mails were given up/)]);
  });

  it('name the stores of which nobody can be told', () => {
    expect(warnings([someone(1, ['storeman'], { storeIds: [1] })])).toEqual([
      'Nobody is told of overdue gear at Brickfield yard: give a manager a mail address.',
    ]);
    expect(warnings([someone(1, ['crew'])])).toEqual([
      'Nobody is told of overdue gear at Quayside store and Brickfield yard: give a manager a mail address.',
    ]);
  });

  it('name the stores of which managers hear whatever they chose', () => {
    const people = [someone(1, ['storeman'], { storeIds: [1] }), someone(2, ['manager'], { digest: 'none' })];
    expect(warnings(people)).toEqual([
      expect.stringMatching(/^Nobody chose to hear of overdue gear at Brickfield yard: managers hear of it/),
    ]);
  });

  it('name the stores of which nobody hears within a day', () => {
    const people = [
      someone(1, ['storeman'], { digest: 'weekly' }),
      someone(2, ['manager'], { digest: 'overdueOnly', storeIds: [2] }),
    ];
    expect(warnings(people)).toEqual([
      expect.stringMatching(
        /^Whoever hears of overdue gear at Quayside store does so once a week only: .* Ask one of them/,
      ),
    ]);
  });

  it('say that no mail server is set, and then nothing of who would get it', () => {
    expect(warnings([], { isOpen: false })).toEqual([
      'No mail server is set: reminders stand in the due diary only.',
    ]);
  });
});

describe('what a person will get, in words', () => {
  const words = (roles: Role[], differences: object = {}) =>
    mailSentences(chosenMail(someone(1, roles, differences), STORES));

  it.each([
    ['daily', 'One mail a day at most, of what falls due and what is overdue at every store'],
    ['weekly', 'One mail a week at most, of what falls due and what is overdue at every store'],
    ['overdueOnly', 'One mail a day at most, of what is overdue at every store'],
  ])('says how much for %s', (digest, start) => {
    expect(words(['storeman'], { digest, urgent: false })).toEqual([`${start}.`]);
  });

  it('names the stores that were chosen, and what is told at once', () => {
    expect(words(['manager'], { digest: 'none', storeIds: [2] })).toEqual([
      'At once: dangers found, and booked gear that is no longer fit, at Brickfield yard.',
    ]);
  });

  it('promises crew and competent persons no booking matters, and crew no due days', () => {
    expect(words(['competentPerson'])).toEqual([
      expect.stringMatching(/^One mail a day/),
      'At once: dangers found, at every store.',
    ]);
    expect(words(['crew'])).toEqual(['At once: dangers found, at every store.']);
    expect(words(['crew'], { urgent: false })).toEqual(['No mail is chosen.']);
  });

  it('says that nothing comes without an address', () => {
    expect(words(['storeman'], { address: null })).toEqual([
      'No mail, as there is no address to send it to.',
    ]);
  });
});
