import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';

interface Line {
  readonly line: { readonly key: string; readonly rating?: { readonly value: string } };
  readonly chosen: readonly {
    readonly tag: string;
    readonly itemId: number;
    readonly ratingRatio?: string;
  }[];
  readonly refused: readonly {
    readonly tag: string;
    readonly refusals: readonly { readonly code: string }[];
  }[];
  readonly refusedCount: number;
  readonly missing: number;
  readonly remedies?: {
    readonly remedies: readonly {
      readonly kind: string;
      readonly items: readonly { tag: string }[];
      readonly covers: number;
    }[];
  };
}

describe.each(ENGINES)('planner on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  async function proposal(jobId: number) {
    const { body } = await yard.storeman.get(`/api/jobs/${jobId}/proposal`).expect(200);
    return body;
  }

  async function line(jobId: number, key = 'panelLifter'): Promise<Line> {
    const { lines } = await proposal(jobId);
    return lines.find((entry: Line) => entry.line.key === key);
  }

  const tags = ({ chosen }: Line) => chosen.map(({ tag }) => tag);
  const codes = ({ refused }: Line, tag: string) =>
    refused.find((item) => item.tag === tag)?.refusals.map(({ code }) => code);

  async function chooseGear(jobId: number, choice: object) {
    const { headers } = await yard.storeman.get(`/api/jobs/${jobId}`).expect(200);
    return yard.storeman
      .post(`/api/jobs/${jobId}/choices`)
      .set('if-match', headers['etag'] ?? '')
      .send(choice)
      .expect(200);
  }

  /*
   * One panel of 478 kg, weighed, so the need is 478 kg without a margin; the job lasts from day 10 to day 20.
   *   PL-1  500 kg, at home              fit, 22 kg to spare
   *   PL-2  480 kg, at home              fit, 2 kg to spare
   *   PL-3  1.05 t, at home              fit, 572 kg to spare
   *   PL-4  477.9 kg                     0.1 kg too little
   *   PL-5  478 kg, at the far yard      fit to the kilogram, but a journey away: transport weighs more
   *   PL-6  500 kg, examined 200 days ago: more than 6 months (LOLER 1998 reg 9(3)(a)(i)), so out of date
   *   PL-7  500 kg, never examined, no report on file
   *   PL-8  500 kg, label worn off
   */
  beforeAll(async () => {
    await yard.gear('PL-1');
    await yard.gear('PL-2', { rating: ['480', 'kg'] });
    await yard.gear('PL-3', { rating: ['1.05', 't'] });
    await yard.gear('PL-4', { rating: ['477.9', 'kg'] });
    await yard.gear('PL-5', { rating: ['478', 'kg'], storeId: yard.farStoreId });
    await yard.gear('PL-6', { examinedDaysAgo: 200 });
    await yard.gear('PL-7', { examinedDaysAgo: null });
    await yard.gear('PL-8', { labelLegible: false });
  });

  it('takes gear at home before gear elsewhere, then the one rated closest to the need', async () => {
    expect(tags(await line(await yard.job({ lifters: 1 })))).toEqual(['PL-2']);
    expect(tags(await line(await yard.job({ lifters: 2 })))).toEqual(['PL-1', 'PL-2']);
    expect(tags(await line(await yard.job({ lifters: 3 })))).toEqual(['PL-1', 'PL-2', 'PL-3']);
    const four = await line(await yard.job({ lifters: 4 }));
    expect(tags(four)).toEqual(['PL-1', 'PL-2', 'PL-3', 'PL-5']);
    expect(four.chosen.map(({ ratingRatio }) => ratingRatio)).toEqual(['1.046', '1.004', '2.196', '1']);
  });

  it('says of each item that is left out every reason why', async () => {
    const planned = await line(await yard.job());
    expect(planned.refusedCount).toBe(4);
    expect(codes(planned, 'PL-4')).toEqual(['under_rated']);
    expect(codes(planned, 'PL-6')).toEqual(['out_of_date']);
    expect(codes(planned, 'PL-7')).toEqual(['never_examined', 'certificate_missing']);
    expect(codes(planned, 'PL-8')).toEqual(['label_illegible']);
  });

  it('leaves other stores alone when the job says so', async () => {
    const planned = await line(await yard.job({ lifters: 4, otherStores: false }));
    expect(planned.missing).toBe(1);
    expect(codes(planned, 'PL-5')).toEqual(['at_another_store']);
    // Moving PL-5 is less effort than examining PL-6 or PL-7.
    expect(planned.remedies?.remedies.map(({ kind, items }) => [kind, items.map(({ tag }) => tag)])).toEqual([
      ['moveFromStore', ['PL-5']],
    ]);
  });

  it('names what would close a shortfall, hiring last', async () => {
    const planned = await line(await yard.job({ lifters: 8 }));
    expect(planned.missing).toBe(4);
    // PL-6 and PL-7 lack an examination only; no examination makes PL-4 stronger or PL-8 readable.
    expect(
      planned.remedies?.remedies.map(({ kind, items, covers }) => [
        kind,
        items.map(({ tag }) => tag),
        covers,
      ]),
    ).toEqual([
      ['examine', ['PL-6', 'PL-7'], 2],
      ['hire', [], 2],
    ]);
  });

  it('offers no examination that would run out before the gear is back', async () => {
    // Away for 250 days: more than the 6 months of LOLER 1998 reg 9(3)(a)(i).
    const planned = await line(await yard.job({ lifters: 1, from: 10, to: 260 }));
    expect(planned.chosen).toEqual([]);
    expect(planned.remedies?.remedies.map(({ kind, covers }) => [kind, covers])).toEqual([['hire', 1]]);
  });

  it('groups what comes from where, the own store first', async () => {
    const { transports } = await proposal(await yard.job({ lifters: 4 }));
    expect(
      transports.map(({ storeName, tags: list }: { storeName: string; tags: string[] }) => [storeName, list]),
    ).toEqual([
      ['Yard', ['PL-1', 'PL-2', 'PL-3']],
      ['Far yard', ['PL-5']],
    ]);
  });

  it('honours a pin, and says so when a refusal stands against it', async () => {
    const jobId = await yard.job({ lifters: 1 });
    const all = await line(jobId);
    const { lines } = await proposal(await yard.job({ lifters: 4 }));
    const third = lines[0].chosen.find(({ tag }: { tag: string }) => tag === 'PL-3');
    await chooseGear(jobId, {
      itemId: third.itemId,
      choice: 'pin',
      lineKey: 'panelLifter',
      reason: 'the client asked for it',
    });
    expect(tags(await line(jobId))).toEqual(['PL-3']);
    const weak = all.refused.find(({ tag }) => tag === 'PL-4');
    const itemId: unknown = weak && Reflect.get(weak, 'itemId');
    await chooseGear(jobId, { itemId: third.itemId, choice: 'none' });
    await chooseGear(jobId, {
      itemId,
      choice: 'pin',
      lineKey: 'panelLifter',
      reason: 'it was always strong enough',
    });
    const after = await proposal(jobId);
    expect(tags(after.lines[0])).toEqual(['PL-2']);
    expect(after.unmetPins).toEqual([
      { itemId, lineKey: 'panelLifter', reason: 'not_fit_for_line', tag: 'PL-4' },
    ]);
  });

  it('leaves out what the storeman excludes, and offers to take it back', async () => {
    const jobId = await yard.job({ lifters: 1, otherStores: false });
    const [second] = (await line(jobId)).chosen;
    await chooseGear(jobId, { itemId: second?.itemId, choice: 'exclude', reason: 'kept for the show' });
    const planned = await line(jobId);
    expect(tags(planned)).toEqual(['PL-1']);
    expect(codes(planned, 'PL-2')).toEqual(['excluded_by_storeman']);
  });

  it('refuses a pin without a line and a choice without a reason', async () => {
    const jobId = await yard.job();
    const send = (choice: object) =>
      yard.storeman.post(`/api/jobs/${jobId}/choices`).set('if-match', '"v1"').send(choice).expect(400);
    expect((await send({ itemId: 1, choice: 'pin', reason: 'because' })).body.errors[0].field).toBe(
      'lineKey',
    );
    expect((await send({ itemId: 1, choice: 'exclude' })).body.errors[0].field).toBe('reason');
  });

  it('gives no strap to two lines, and the stronger to the line that needs it', async () => {
    // 478 kg x 9.80665 m/s2 = 4 687.58 N. Round the width a quarter each: 1 171.9 N, two of them. Under the rail half
    // each: 2 343.8 N, two and two spare. 120 daN serves the first only, 240 daN both.
    for (const number of [1, 2])
      await yard.gear(`RS-${number}`, { kind: 'ratchetStrap', rating: ['120', 'daN'] });
    for (const number of [3, 4, 5, 6, 7])
      await yard.gear(`RS-${number}`, { kind: 'ratchetStrap', rating: ['240', 'daN'] });
    const jobId = await yard.job({ only: ['strapsRoundWidth', 'strapsUnderBottomRail'] });
    expect((await line(jobId, 'strapsRoundWidth')).line.rating?.value).toBe('1171.894675');
    expect(tags(await line(jobId, 'strapsRoundWidth'))).toEqual(['RS-1', 'RS-2']);
    expect(tags(await line(jobId, 'strapsUnderBottomRail'))).toEqual(['RS-3', 'RS-4', 'RS-5', 'RS-6']);
    expect(codes(await line(jobId, 'strapsUnderBottomRail'), 'RS-1')).toEqual(['under_rated']);
  });
});
