import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';

const today = new Clock().today('Europe/London');

/** What a store of its own would hand over: enough for one crew, examined lately, and one lifter out of date. */
function gearFile(): string {
  const examined = addDays(today, -20);
  const made = addDays(today, -500);
  const row = (tag: string, kind: string, rating: string, { on = examined, ...sizes }: RowRest = {}) =>
    [
      ...[tag, kind, 'Norfell', `N${tag}7`, rating, on, 'North store', made],
      ...SIZES.map(({ name }) => sizes[name] ?? ''),
    ].join(',');
  const many = (count: number, prefix: string, kind: string, rating: string, rest: RowRest = {}) =>
    Array.from({ length: count }, (_, index) => row(`${prefix}-${index + 1}`, kind, rating, rest));
  const lifter = { jawMin: '80', jawMax: '140', bore: '62' };
  return [
    [
      'Tag,Kind,Maker,Serial number,Rating,Last examined,Store,Manufactured',
      ...SIZES.map(({ heading }) => heading),
    ].join(','),
    ...many(8, 'ST', 'Ratchet strap', '2500 daN', { length: '9' }),
    ...many(4, 'TY', 'Panel trolley', '450 kg'),
    ...many(2, 'LN', 'Safety line', '', { length: '15' }),
    ...many(2, 'HS', 'Harness', ''),
    ...many(2, 'LY', 'Lanyard', ''),
    ...many(4, 'WS', 'Sling', '1 t'),
    ...many(4, 'SK', 'Shackle', '1 t'),
    row('LF-1', 'Panel lifter', '800 kg', { ...lifter, on: addDays(today, -400) }),
    row('LF-2', 'Panel lifter', '600 kg', lifter),
    row('BA-1', 'Spreader bar', '1.5 t', { length: '3' }),
    row('MA-1', 'Host machine', '2.5 t', { bar: '60' }),
    row('PF-1', 'Work platform', '2 persons', { floor: '8' }),
  ].join('\r\n');
}

const SIZES = [
  { name: 'bar', heading: 'outside diameter of the bar the lifter hangs on (mm)' },
  { name: 'jawMin', heading: 'smallest jaw opening (mm)' },
  { name: 'jawMax', heading: 'largest jaw opening (mm)' },
  { name: 'bore', heading: 'bore of the head (mm)' },
  { name: 'length', heading: 'length (m)' },
  { name: 'floor', heading: 'height of the platform floor (m)' },
] as const;

/** When it was examined, where that is not with the rest, and its sizes. */
type RowRest = { readonly on?: string } & Partial<Record<(typeof SIZES)[number]['name'], string>>;

/** The main job as a storeman does it, in a real browser on the built server, from the first start to the return. */
describe('the main job in a browser', () => {
  let server: BuiltServer;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    server = await startBuiltServer();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    page.setDefaultTimeout(15_000);
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  const open = (path: string) => page.goto(server.address + path);
  const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
  const fill = (name: string, text: string) => page.locator(`[name="${name}"]`).first().fill(text);
  const content = () => page.locator('main').innerText();

  it('makes the first account with the code that the server printed', async () => {
    await open('/');
    await page.waitForURL('**/first-run');
    await fill('setupCode', server.setupCode ?? '');
    await fill('name', 'Mara Quill');
    await fill('signInName', 'mara');
    await fill('password', 'tally pegs on the wall');
    await press('Make the account and sign in');
    await page.waitForURL(`${server.address}/`);
    expect(await content()).toContain('Three steps to the first job');
  });

  it('opens two stores', async () => {
    for (const name of ['North store', 'Harbour yard']) {
      await open('/stores');
      await fill('name', name);
      await fill('address', 'Quay Road');
      await page.locator('[name=scheme]').selectOption('gb');
      await fill('timeZone', 'Europe/London');
      await press('Open the store');
      await page.waitForURL('**/stores/*');
    }
    expect(await content()).toContain('The board is empty');
  });

  it('is shown every fault of a register as it came, and takes its sound rows', async () => {
    await open('/register/import');
    await page.getByLabel('File').setInputFiles('test/golden/samples/register-north.csv');
    await press('Look at the file');
    await page.locator('[name=lengthUnit]').selectOption('m');
    await press('Look again');
    expect(await content()).toContain('Did you mean trolley?');
    await press(/^Take the \d+ sound rows/);
    expect(await content()).toMatch(/\d+ rows were taken into the register/);
    expect(await content()).toContain('Take the file to mend');
  });

  it('imports the gear of the crew, its reports on file', async () => {
    await open('/register/import');
    const buffer = Buffer.from(gearFile());
    await page.getByLabel('File').setInputFiles({ name: 'crew.csv', mimeType: 'text/csv', buffer });
    await press('Look at the file');
    await page.locator('[name=reportsOnFile]').check();
    await press('Look again');
    await press('Take all 31 rows');
    expect(await content()).toContain('31 rows were taken');
  });

  it('finds an item by its tag and sees its rating plate', async () => {
    await open('/');
    await page.getByLabel('Tag or serial number').fill('lf-2');
    await press('Look up');
    await page.getByRole('link', { name: 'LF-2', exact: true }).click();
    expect(await page.locator('.plate').innerText()).toMatch(/LF-2[\s\S]*Panel lifter[\s\S]*600/);
  });

  it('copies the load chart of the machine from its plate', async () => {
    await open('/register?kind=hostMachine');
    await page.getByRole('link', { name: 'MA-1', exact: true }).click();
    await page.getByRole('link', { name: 'Change the record' }).click();
    await page.locator('[name="loadChart.points"]').fill('3000 500 2500\n9000 500 2000\n9000 1200 1400');
    await fill('loadChart.axleToForkFaceMm', '450');
    await fill('loadChart.axleToCarriageMm', '400');
    await page.locator('[name="loadChart.attachmentCover.by"]').selectOption('plate');
    await fill('loadChart.attachmentCover.reference', 'plate 2 of 12 May 2025');
    await press(/^Save/);
    expect(await content()).toContain('plate 2 of 12 May 2025');
  });

  it('enters the job with its panels', async () => {
    await open('/jobs/new');
    await fill('reference', 'J-1');
    await fill('name', 'Marram Hall');
    await fill('site', 'Dune Road');
    await fill('loadOutDay', today);
    await fill('backDay', addDays(today, 7));
    await page.locator('[name=storeId]').selectOption({ label: 'North store' });
    await page.locator('[name=method]').selectOption('tall-panel');
    await fill('counts.panelsOnWheels', '2');
    const panel = {
      name: 'A1',
      heightMm: '7450',
      widthMm: '1210',
      thicknessMm: '112',
      massKg: '478',
      count: '14',
    };
    for (const [field, value] of Object.entries(panel)) await fill(`panels[0].${field}`, value);
    await fill('panels[0].packingKg', '22');
    await press('Make the job');
    await page.waitForURL('**/jobs/1');
    expect(await content()).toMatch(/heaviest is A1 at 478\s*kg; packed, A1 at 500\s*kg/);
  });

  it('is told which figures the calculation lacks, states them, and reads every step', async () => {
    await open('/jobs/1/calculation');
    expect(await content()).toContain('The mass of the lifter is not stated');
    await page.getByRole('link', { name: 'State the figures of this job' }).click();
    const figures = {
      lifterMassKg: '180',
      lifterCentreMm: '200',
      liftHeightM: '8.2',
      panelsPerStillage: '2',
      stillagesPerTruck: '1',
    };
    for (const [key, value] of Object.entries(figures)) {
      const row = page.locator('.fields', { has: page.locator(`input[type=hidden][value="${key}"]`) });
      await row.locator('xpath=ancestor::details').evaluate((each) => each.setAttribute('open', ''));
      await row.locator('input[name$=".value"]').fill(value);
      await row.locator('input[name$=".reason"]').fill('read off the plate');
    }
    await press('Save the job');
    await open('/jobs/1/calculation');
    const text = await content();
    expect(text).not.toContain('Not settled yet');
    // 478 kg × 1.10; (500 kg × 1.10 ÷ 2 + 60 kg ÷ 2) × 2.5 m ÷ 2 m.
    expect(text).toMatch(/heaviest lift\s*525\.8\s*kg/);
    expect(text).toMatch(/tension in a top leg\s*381\.25\s*kg/);
  });

  it('sees what is chosen beside what is refused and why, and books it', async () => {
    await open('/jobs/1/plan');
    expect(await content()).toContain('Every line can be met');
    const lifter = page.locator('#line-panelLifter');
    await lifter
      .locator('details')
      .evaluateAll((all) => all.forEach((each) => each.setAttribute('open', '')));
    expect(await lifter.innerText()).toMatch(
      /fit LF-2[\s\S]*Refused[\s\S]*LF-1[\s\S]*Out of date: its thorough examination was due/,
    );
    await press(/^Reserve \d+ items/);
    await page.waitForURL(/\/jobs\/1(\/plan)?(\?.*)?$/);
    await open('/jobs/1');
    expect(await content()).toContain('reserved');
  });

  it('hands out by tag, and refuses a wrong item on the spot', async () => {
    await open('/jobs/1/hand-out');
    await fill('tag', 'LF-1');
    await press('Hand out');
    expect(await page.getByRole('alert').innerText()).toContain('LF-1');
    await fill('tag', 'lf-2');
    await press('Hand out');
    await open('/jobs/1');
    expect(await page.getByRole('row', { name: /LF-2/ }).innerText()).toContain('out');
  });

  it('shows a defect on the tally board and flags the job with what to take instead', async () => {
    await open('/register?kind=ratchetStrap');
    const booked = page.getByRole('row', { name: /reserved/ }).first();
    const tag = await booked.getByRole('link').innerText();
    await booked.getByRole('link').click();
    await page.getByRole('link', { name: 'Report a defect' }).click();
    await page.locator('[name=severity]').first().waitFor();
    await chooseSeverity(page);
    await fill('description', 'edge cut through a third of the width');
    await press(/Report/);
    await open('/');
    expect(await content()).toContain('Job J-1 needs a look');
    await open('/jobs/1');
    expect(await content()).toMatch(new RegExp(`${tag}[\\s\\S]*no longer fit[\\s\\S]*Take [A-Z]+-?\\d`));
  });

  it('takes gear back with its condition', async () => {
    await open('/jobs/1/bring-back');
    await fill('tag', 'LF-2');
    await page.locator('[name=condition][value=good]').check();
    await press('Take it in');
    await open('/jobs/1');
    expect(await page.getByRole('row', { name: /LF-2/ }).innerText()).toContain('back');
    await open('/ledger');
    await page.getByRole('link', { name: 'Check every entry' }).click();
    expect(await content()).toMatch(/All \d+ entries hold/);
  });
});

async function chooseSeverity(page: Page): Promise<void> {
  const field = page.locator('[name=severity]').first();
  const isList = (await field.evaluate((element) => element.tagName)) === 'SELECT';
  await (isList ? field.selectOption('immediateDanger') : page.locator('[value=immediateDanger]').check());
}
