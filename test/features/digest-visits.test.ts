import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { DiaryOverview } from '../../src/reminders/diary/diary-overview.service.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { shortDay } from '../../src/web/sentences/words.js';
import { ENGINES } from '../support/engines.js';
import { nextWeekday, startMailYard, type MailYard } from '../support/mail-yard.js';
import { promise } from '../support/promise.js';

describe.each(ENGINES)('a visit in mail and diary on %s', (engine) => {
  let yard: MailYard;
  beforeAll(async () => {
    yard = await startMailYard(engine);
    await yard.choose('storeman', { urgent: false });
    await yard.remind(yard.storeId, { leadDays: [7] });
  });
  afterAll(() => yard.close());

  it('is on the same day and clears as many items, however short the lead times', async () => {
    const monday = nextWeekday(yard.day(60), 1);
    const instant = `${monday}T07:30:00.000Z`;
    for (const [tag, dueIn] of [
      ['TOLD-1', 7],
      ['SOON-1', 20],
      ['SIX-1', 44],
      ['TOO-1', 45],
    ] as const)
      await yard.dueOn(tag, addDays(monday, dueIn));
    // It leaves on Thursday for longer than it is in date: the Wednesday before is the last day to examine it.
    const { id: itemId } = await yard.dueOn('LONG-1', addDays(monday, 100));
    const reference = `LONG-${engine}`;
    const days = { from: addDays(monday, 3), to: addDays(monday, 105) };
    await promise(yard, { itemId, storeId: yard.storeId, reference, ...days });
    await yard.digests(instant);

    const wednesday = addDays(monday, 2);
    const { visits } = await yard.app
      .get(Clock)
      .at(instant, () => yard.app.get(DiaryOverview, { strict: false }).read({ storeId: yard.storeId }));
    // Due six weeks after the visit is not too early; due a day later is.
    const [first] = visits;
    expect(first?.on).toBe(wednesday);
    expect(first?.entries.map(({ tag }) => tag).sort()).toEqual(['LONG-1', 'SIX-1', 'SOON-1', 'TOLD-1']);
    const [mail] = await yard.mails('storeman');
    const text = mail?.plainText.replace(/\s+/g, ' ') ?? '';
    expect(text).toContain(`By ${shortDay(wednesday)} at Yard: a competent person`);
    expect(text).toContain(
      `One visit clears 4 items and saves job ${reference}: this one, and 3 more in the diary.`,
    );
    expect(text).toContain('TOLD-1');
    for (const tag of ['SOON-1', 'SIX-1', 'TOO-1', 'LONG-1']) expect(text).not.toContain(tag);
  });
});
