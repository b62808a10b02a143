import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLabel } from '../../src/labels/draw-label.js';
import { layOutWords, type LabelWords } from '../../src/labels/label-text.js';
import { placeLabels, SHEET_LAYOUTS, type SheetLayout } from '../../src/labels/sheet-layout.js';
import { Problem } from '../../src/problem.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

const WORDS: LabelWords = {
  tag: 'PL-014',
  kind: 'Panel lifter',
  ratings: ['WLL 500 kg per side'],
  serial: 'Serial HW 3334/5X',
  cautions: 'Examine before use; see the register.',
};
const URL_OF_TAG = 'http://gear.example:3000/t/PL-014';

function layout(key: string): SheetLayout {
  const found = SHEET_LAYOUTS.find((each) => each.key === key);
  if (!found) throw new Error(`There is no layout ${key}.`);
  return found;
}

// ISO 216: A4 is 210 mm by 297 mm.
describe('label sheets', () => {
  it.each(SHEET_LAYOUTS.map((each) => [each.name, each] as const))('%s lies on its paper', (_name, each) => {
    const { columns, rows, pitchXMm, pitchYMm, leftMm, topMm, labelWidthMm, labelHeightMm } = each;
    const right = leftMm + (columns - 1) * pitchXMm + labelWidthMm;
    const bottom = topMm + (rows - 1) * pitchYMm + labelHeightMm;
    expect(each.pageWidthMm - right).toBeCloseTo(leftMm, 6);
    expect(each.pageHeightMm - bottom).toBeCloseTo(topMm, 6);
    expect(pitchXMm).toBeGreaterThanOrEqual(labelWidthMm);
    expect(pitchYMm).toBeGreaterThanOrEqual(labelHeightMm);
    if (each.key !== 'single-60x40') expect([each.pageWidthMm, each.pageHeightMm]).toEqual([210, 297]);
  });

  it('are filled row by row from the first label that is still there', () => {
    const sheet = layout('a4-3x8-70x37');
    const tags = Array.from({ length: 4 }, (_, index) => `T-${index}`);
    expect(placeLabels(tags, sheet, 23)).toEqual([
      [
        { item: 'T-0', xMm: 70, yMm: 259.5 },
        { item: 'T-1', xMm: 140, yMm: 259.5 },
      ],
      [
        { item: 'T-2', xMm: 0, yMm: 0.5 },
        { item: 'T-3', xMm: 70, yMm: 0.5 },
      ],
    ]);
    expect(placeLabels(tags.slice(0, 1), sheet, 1)).toEqual([[{ item: 'T-0', xMm: 0, yMm: 0.5 }]]);
    expect(placeLabels([], sheet, 5)).toEqual([]);
  });

  it('begin a second sheet with the label after the last place', () => {
    const sheet = layout('single-60x40');
    expect(placeLabels(['A', 'B'], sheet, 1).map((each) => each.length)).toEqual([1, 1]);
    expect(placeLabels(Array.from({ length: 24 }), layout('a4-3x8-70x37'), 1)).toHaveLength(1);
    expect(placeLabels(Array.from({ length: 25 }), layout('a4-3x8-70x37'), 1)).toHaveLength(2);
  });
});

describe('one label', () => {
  // ISO/IEC 18004: a quiet zone of 4 modules on each side, and 4 × version + 17 modules between.
  it.each(SHEET_LAYOUTS.map((each) => [each.name, each] as const))(
    'has a readable code and words on %s, inside its edges',
    (_name, each) => {
      const { symbol, text } = drawLabel(URL_OF_TAG, WORDS, each);
      expect((symbol.edgeModules - 8 - 17) % 4).toBe(0);
      expect(symbol.moduleMm).toBeGreaterThanOrEqual(0.4);
      expect(symbol.xMm + symbol.edgeModules * symbol.moduleMm).toBeLessThanOrEqual(
        each.labelWidthMm - each.marginMm + 1e-9,
      );
      expect(symbol.yMm + symbol.edgeModules * symbol.moduleMm).toBeLessThanOrEqual(
        each.labelHeightMm - each.marginMm + 1e-9,
      );
      for (const line of text.lines) expect(line.sizeMm).toBeGreaterThanOrEqual(1.8);
      expect(text.lines[0]).toMatchObject({ text: 'PL-014', look: 'tag' });
      expect(text.lines[0]?.sizeMm).toBeGreaterThan(3.5);
    },
  );

  // Error correction level Q keeps 24 byte signs less than level L would: ISO/IEC 18004, table 7, version 3 holds 32
  // bytes at Q and version 4 holds 46.
  it('has the version that level Q needs', () => {
    const sheet = layout('a4-plain');
    const modules = (length: number) =>
      drawLabel(`http://g/t/${'a'.repeat(length - 11)}`, WORDS, sheet).symbol.edgeModules - 8;
    expect(modules(32)).toBe(4 * 3 + 17);
    expect(modules(33)).toBe(4 * 4 + 17);
    expect(modules(46)).toBe(4 * 4 + 17);
    expect(modules(47)).toBe(4 * 5 + 17);
  });

  it('is refused where its modules would be smaller than 0.4 mm, and not a module before', () => {
    const sheet = { ...layout('single-60x40'), marginMm: 0 };
    const wide = (edgeMm: number) => ({ ...sheet, labelHeightMm: edgeMm, labelWidthMm: edgeMm * 3 });
    const edgeModules = 4 * 4 + 17 + 8; // version 4 holds the 33 signs of the address
    const small: LabelWords = { ...WORDS, tag: 'A', ratings: [], cautions: 'x' };
    expect(drawLabel(URL_OF_TAG, small, wide(edgeModules * 0.4 + 1e-6)).symbol.moduleMm).toBeCloseTo(0.4, 5);
    expect(() => drawLabel(URL_OF_TAG, small, wide(edgeModules * 0.4 - 1e-3))).toThrow(Problem);
    expect(() => drawLabel(URL_OF_TAG, small, wide(edgeModules * 0.4 - 1e-3))).toThrow(/0\.40? mm/);
  });

  it('is refused where its words would be too small to read', () => {
    const words = { ...WORDS, ratings: Array.from({ length: 9 }, () => 'WLL 1000 kg with both legs to 45°') };
    expect(() => drawLabel(URL_OF_TAG, words, layout('a4-4x10-52x29'))).toThrow(/too small to read/);
    expect(drawLabel(URL_OF_TAG, words, layout('a4-plain')).tag).toBe('PL-014');
  });

  it('cuts no sign of a tag or serial number away, however long', () => {
    const long = { ...WORDS, tag: 'W'.repeat(40), serial: `Serial ${'8'.repeat(60)}` };
    const lines = layOutWords(long, { widthMm: 60, heightMm: 40 }) ?? [];
    const tag = lines.filter(({ look }) => look === 'tag').map(({ text }) => text);
    expect(tag.join('')).toBe(long.tag);
    expect(lines.map(({ text }) => text).join('')).toContain('8'.repeat(60));
  });
});

describe.each(ENGINES)('label pages on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => {
    server = await startGearServer(engine);
  });
  afterAll(() => server.close());

  const sheets = (query: string) => server.storeman.get(`/labels/sheets?${query}`);

  it('print the items that were named, in that order, with the code of each', async () => {
    const [first, second] = [await server.newItem(), await server.newItem()];
    const tags = encodeURIComponent(`${second.tag}\n ${first.tag.toLowerCase()}, ${second.tag}`);
    const { text } = await sheets(`tags=${tags}&layout=a4-2x7-99x38&start=14`).expect(200);
    expect([...text.matchAll(/data-tag="([^"]+)"/g)].map(([, tag]) => tag)).toEqual([second.tag, first.tag]);
    expect(text).toContain('2 labels on 2 sheets');
    expect(text).toMatch(new RegExp(`QR code of ${first.tag}: http://127\\.0\\.0\\.1:\\d+/t/${first.tag}"`));
    expect(text).toMatch(/WLL 500\skg/);
    expect(text).toMatch(/Examine/);
    expect(text).not.toMatch(/style=|<style|<script/);
  });

  it('write nothing of an item as markup', async () => {
    const tag = '<b>&"1';
    const made = await server.newItem({ tag, serial: '<i>7</i>' });
    const { text } = await sheets(`itemId=${made.id}&layout=a4-plain`).expect(200);
    expect(text).toContain('&lt;b>&amp;');
    expect(text).toContain(`/t/${encodeURIComponent(tag)}`);
    expect(text).not.toMatch(/<b>|<i>/);
    await server.crew
      .get(`/t/${encodeURIComponent(tag)}`)
      .expect(303)
      .expect('location', `/register/${made.id}`);
  });

  it('print a kind of a store, leaving out what is scrapped', async () => {
    const strap = {
      kind: 'ratchetStrap',
      markings: [{ measure: 'lashingCapacity', value: '2500', unit: 'daN', condition: 'straight' }],
      dimensions: { lengthM: '6' },
    };
    const [kept, gone] = [await server.newItem(strap), await server.newItem(strap)];
    const scrap = { reason: 'cut', howMadeUnusable: 'cut through' };
    await server.examiner.post(`/api/items/${gone.id}/scrap`).send(scrap).expect(201);
    const { text } = await sheets(`kind=ratchetStrap&storeId=${server.storeId}`).expect(200);
    expect([...text.matchAll(/data-tag="([^"]+)"/g)].map(([, tag]) => tag)).toEqual([kept.tag]);
    expect(text).toMatch(/LC 2\s500\sdaN/);
    expect(text.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')).toContain('Not for lifting.');
    await sheets(`itemId=${gone.id}`).expect(400);
  });

  it.each([
    ['nothing chosen', '', 'at least one item'],
    ['an unknown tag', 'tags=NO-SUCH', 'NO-SUCH'],
    ['an unknown sheet', 'kind=panelLifter&layout=a3', 'choose a sheet'],
    ['a place beyond the sheet', 'kind=panelLifter&layout=a4-2x7-99x38&start=15', '1 to 14'],
    ['place 0', 'kind=panelLifter&start=0', '1 for a new sheet'],
    ['a field it does not know', 'surprise=1', 'surprise'],
  ])('refuse %s with words', async (_what, query, words) => {
    const { text } = await sheets(query).expect(400);
    expect(text).toContain(words);
    expect(text).toContain('<h1>Labels</h1>');
  });

  it('show which items before anything is printed, and where the codes lead', async () => {
    const { tag } = await server.newItem();
    const { text } = await server.storeman.get(`/labels?tags=${tag}`).expect(200);
    expect(text).toContain('1 label on 1 sheet');
    expect(text).toMatch(/No phone reaches that address/);
    await server.crew.get('/labels').expect(403);
    await server.crew.get('/labels/sheets').expect(403);
    await server.visitor().get('/labels').expect(303);
  });

  it('open the item of a scanned tag, and offer those that look like a tag that none carries', async () => {
    const { id, tag } = await server.newItem({ tag: 'SL-O10' });
    await server.crew.get('/t/sl%20o10').expect(303).expect('location', `/register/${id}`);
    await server.visitor().get(`/t/${tag}`).expect(303).expect('location', `/sign-in?then=%2Ft%2F${tag}`);
    const { text } = await server.crew.get('/t/5L-010').expect(404);
    expect(text).toContain(`href="/register/${id}"`);
    const none = await server.crew.get('/t/%3Cscript%3E').expect(404);
    expect(none.text).not.toContain('<script>');
    await server.crew.get(`/t/${'x'.repeat(90)}`).expect(404);
    await server.crew.get(`/t/${'x'.repeat(300)}`).expect(414);
  });
});
