import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DigestSweep } from '../../src/reminders/digest/digest-sweep.service.js';
import { Clock } from '../../src/clock.js';
import { addDays, type Day } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { itemCalls } from '../support/item-calls.js';
import { nextWeekday, startMailYard, type MailYard } from '../support/mail-yard.js';
import { promise } from '../support/promise.js';

const morning = (day: Day) => `${day}T07:30:00.000Z`;

describe.each(ENGINES)('gear that comes to fall due soon while digests come, on %s', (engine) => {
  let yard: MailYard;
  let monday: Day;
  const onDay = (offset: number) => addDays(monday, offset);
  beforeAll(async () => {
    yard = await startMailYard(engine);
    monday = nextWeekday(yard.day(60), 1);
    await yard.choose('storeman', { urgent: false, storeIds: [yard.storeId] });
    await yard.remind(yard.storeId, { leadDays: [14] });
  });
  afterAll(() => yard.close());

  const { record, act } = itemCalls(() => yard, { type: 'thoroughExamination', outcome: 'fit' });

  /** What came to the storeman on a day. */
  async function textOf(offset: number): Promise<string> {
    const before = (await yard.mails('storeman')).length;
    await yard.digests(morning(onDay(offset)));
    await yard.deliver(morning(onDay(offset)));
    return (await yard.mails('storeman'))
      .slice(before)
      .map(({ plainText }) => plainText)
      .join('\n');
  }

  /** The tags that the storeman is told of on a day, of those given. */
  async function told(offset: number, ...tags: readonly string[]): Promise<string[]> {
    const text = await textOf(offset);
    return tags.filter((tag) => text.includes(tag));
  }

  async function moveToYard(id: number): Promise<void> {
    const { headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/items/${id}`)
      .set('if-match', String(headers['etag']))
      .send({ storeId: yard.storeId })
      .expect(200);
  }

  it('is told of by the next digest when it was entered after its lead time, and once', async () => {
    const tags = ['EARLY-1', 'LATE-1', 'FAR-1'];
    await yard.dueOn('EARLY-1', onDay(5));
    expect(await told(0, ...tags)).toEqual(['EARLY-1']);
    await yard.dueOn('LATE-1', onDay(5));
    await yard.dueOn('FAR-1', onDay(40));
    expect(await told(1, ...tags)).toEqual(['LATE-1']);
    expect(await told(2, ...tags)).toEqual([]);
  });

  it('is told of when it comes from another store', async () => {
    const { id } = await yard.dueOn('MOVED-1', onDay(9), { storeId: yard.farStoreId });
    expect(await told(3, 'MOVED-1')).toEqual([]);
    await moveToYard(id);
    expect(await told(4, 'MOVED-1')).toEqual(['MOVED-1']);
    expect(await told(5, 'MOVED-1')).toEqual([]);
  });

  it('is told of when an examiner names an early day, and not when it is examined in its usual rhythm', async () => {
    const [early, usual] = [
      await yard.dueOn('NAMED-1', onDay(60)),
      await yard.dueOn('USUAL-1', onDay(8 + 14)),
    ];
    expect(await told(8, 'NAMED-1', 'USUAL-1')).toEqual(['USUAL-1']);
    await record(yard.examiner, early.id, { doneOn: yard.day(0), nextDueOn: onDay(12) }).expect(201);
    // LOLER 1998 reg 9(3)(a): six months from now, which is more than two weeks away still.
    await record(yard.examiner, usual.id, { doneOn: yard.day(0) }).expect(201);
    expect(await told(9, 'NAMED-1', 'USUAL-1')).toEqual(['NAMED-1']);
    expect(await told(10, 'NAMED-1', 'USUAL-1')).toEqual([]);
  });

  it('is told of when it is found again', async () => {
    const { id, tag } = await yard.dueOn('FOUND-1', onDay(20));
    const row = { itemId: id, storeId: yard.storeId, reference: `FOUND-${engine}`, state: 'out' as const };
    const job = await promise(yard, { ...row, from: yard.day(-5), to: yard.day(1) });
    await yard.storeman.post(`/api/jobs/${job}/returns`).send({ tag, condition: 'missing' }).expect(201);
    expect(await told(11, 'FOUND-1')).toEqual([]);
    await act(yard.storeman, id, 'found', {}).expect(204);
    expect(await told(14, 'FOUND-1')).toEqual(['FOUND-1']);
    expect(await told(15, 'FOUND-1')).toEqual([]);
  });

  it('is no news because all due days are worked out again', async () => {
    await yard.dueOn('SAME-1', onDay(20));
    expect(await told(16, 'SAME-1')).toEqual(['SAME-1']);
    await yard.write((manager) => manager.query('INSERT INTO due_stale (item_id) SELECT id FROM item'));
    expect(await told(17, 'SAME-1')).toEqual([]);
  });

  it('is told of by a digest that is decided before its due day is worked out', async () => {
    const { id } = await yard.dueOn('STALE-1', onDay(60));
    expect(await told(18, 'STALE-1')).toEqual([]);
    await record(yard.examiner, id, { doneOn: yard.day(0), nextDueOn: onDay(24) }).expect(201);
    await yard.dueOn('STALE-2', onDay(24));
    const instant = morning(onDay(21));
    const before = (await yard.mails('storeman')).length;
    await yard.app.get(Clock).at(instant, () => yard.app.get(DigestSweep, { strict: false }).run());
    await yard.deliver(instant);
    const [mail] = (await yard.mails('storeman')).slice(before);
    expect(mail?.plainText).toContain('STALE-1');
    expect(mail?.plainText).toContain('STALE-2');
  });

  it('waits for a working day when it is overdue, and is then told of as news', async () => {
    const { id } = await yard.dueOn('OLD-1', onDay(-20), { storeId: yard.farStoreId });
    expect(await told(25, 'OLD-1')).toEqual([]);
    await moveToYard(id);
    // From Friday on: the weekend says nothing.
    expect([await told(26, 'OLD-1'), await told(27, 'OLD-1')]).toEqual([[], []]);
    expect(newsIn(await textOf(28))).toContain('OLD-1');
    const tuesday = await textOf(29);
    expect(tuesday).toContain('OLD-1');
    expect(newsIn(tuesday)).not.toContain('OLD-1');
  });

  it('waits for the next working day when it was never examined', async () => {
    await told(32);
    const { id } = await yard.newItem({ tag: 'NEVER-1' });
    await yard.write((manager) =>
      manager.query('UPDATE item SET created_at = $1 WHERE id = $2', [`${onDay(32)}T15:00:00.000Z`, id]),
    );
    expect([await told(33, 'NEVER-1'), await told(34, 'NEVER-1')]).toEqual([[], []]);
    expect(await told(35, 'NEVER-1')).toEqual(['NEVER-1']);
  });
});

/** A mail from its first section up to what was told before. */
function newsIn(text: string): string {
  const [, sections = ''] = text.split(/\n\n(.*)/s);
  return sections.split(/still overdue in store/i)[0] ?? '';
}
