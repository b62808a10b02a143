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
  const row = (tag: string, kind: string, rating: string, rest: { bar?: string; on?: string } = {}) =>
    [tag, kind, 'Norfell', `N${tag}7`, rating, rest.bar ?? '', rest.on ?? examined, 'North store', made].join(
      ',',
    );
  const many = (count: number, prefix: string, kind: string, rating: string) =>
    Array.from({ length: count }, (_, index) => row(`${prefix}-${index + 1}`, kind, rating));
  return [
    'Tag,Kind,Maker,Serial number,Rating,outside diameter of the bar the lifter hangs on (mm),Last examined,Store,Manufactured',
    ...many(8, 'ST', 'Ratchet strap', '2500 daN'),
    ...many(4, 'TY', 'Panel trolley', '450 kg'),
    ...many(2, 'LN', 'Safety line', ''),
    ...many(2, 'HS', 'Harness', ''),
    ...many(2, 'LY', 'Lanyard', ''),
    row('LF-1', 'Panel lifter', '800 kg', { on: addDays(today, -400) }),
    row('LF-2', 'Panel lifter', '600 kg'),
    row('BA-1', 'Spreader bar', '1.5 t'),
    row('MA-1', 'Host machine', '2.5 t', { bar: '60 mm' }),
    row('PF-1', 'Work platform', '2 persons'),
  ].join('\r\n');
}

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
    await press('Take all 23 rows');
    expect(await content()).toContain('23 rows were taken');
  });

  it('finds an item by its tag and sees its rating plate', async () => {
    await open('/');
    await page.getByLabel('Tag or serial number').fill('lf-2');
    await press('Look up');
    await page.getByRole('link', { name: 'LF-2', exact: true }).click();
    expect(await page.locator('.plate').innerText()).toMatch(/LF-2[\s\S]*Panel lifter[\s\S]*600/);
  });

  it('enters the job with its panels', async () => {
    await open('/jobs/new');
    await fill('reference', 'J-1');
    await fill('name', 'Marram Hall');
    await fill('site', 'Dune Road');
    await fill('loadOutDay', today);
    await fill('backDay', addDays(today, 7));
    await page.locator('[name=storeId]').selectOption({ label: 'North store' });
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
