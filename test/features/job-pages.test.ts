import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { workbook } from '../support/zip.js';

describe.each(ENGINES)('pages of jobs on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const open = async (path: string) => (await yard.storeman.get(path).expect(200)).text;
  const send = (path: string, fields: Record<string, string>) =>
    yard.storeman.post(path).type('form').send(fields);
  const newJob = (changes: Record<string, string> = {}) => ({
    reference: 'P-1',
    name: 'Sandpiper <Shed>',
    site: 'Dune Road',
    scheme: 'gb',
    method: 'tall-panel',
    storeId: String(yard.storeId),
    loadOutDay: yard.day(3),
    backDay: yard.day(6),
    otherStores: 'true',
    'counts.crews': '1',
    'counts.liftersInUse': '1',
    'counts.panelsOnWheels': '0',
    'counts.trucksUnloading': '0',
    'counts.personsAloft': '0',
    'parameters[0].key': 'handlingFactor',
    'parameters[0].value': '1',
    'parameters[0].reason': 'hung by hand in this test',
    'panels[0].name': 'A1',
    'panels[0].heightMm': '7450',
    'panels[0].widthMm': '1210',
    'panels[0].thicknessMm': '112',
    'panels[0].massKg': '478',
    'panels[0].count': '4',
    ...changes,
  });

  it('shows a blank form, and what was typed beside what is wrong with it', async () => {
    expect(await open('/jobs/new')).toContain('Make the job');
    const refused = await send('/jobs', newJob({ 'panels[0].massKg': 'heavy', backDay: yard.day(1) })).expect(
      400,
    );
    expect(refused.text).toContain('value="heavy"');
    expect(refused.text).toContain('panels[0].massKg-error');
  });

  it('keeps fittings and a centre of gravity off the middle, and says where they cannot be', async () => {
    const odd = { 'panels[0].fittingsKg': '18.5', 'panels[0].centreOffsetMm': '62.5' };
    const refused = await send('/jobs', newJob({ reference: 'P-9', ...odd })).expect(400);
    expect(refused.text).toContain('panels[0].fittingsKg-error');
    expect(refused.text).toContain('the weighed mass has the fittings in it');
    const estimated = { 'panels[0].massKg': '', 'panels[0].arealMassKgPerM2': '52', ...odd };
    const made = await send('/jobs', newJob({ reference: 'P-9', ...estimated })).expect(303);
    const form = await open(`${made.headers['location']}/edit`);
    expect(form).toMatch(/name="panels\[0\]\.fittingsKg"[^>]*value="18\.5"/);
    expect(form).toMatch(/name="panels\[0\]\.centreOffsetMm"[^>]*value="62\.5"/);
  });

  it('goes from a new job to gear on the truck and back', async () => {
    const [first, spare] = [await yard.gear('PL-31'), await yard.gear('PL-32', { rating: ['600', 'kg'] })];
    await yard.gear('PL-33', { rating: ['450', 'kg'] });
    const made = await send('/jobs', newJob()).expect(303);
    const url = made.headers['location'] ?? '';
    const sheet = await open(url);
    expect(sheet).toContain('Sandpiper &lt;Shed>');
    expect(sheet).toContain('478');
    expect(await open('/jobs')).toContain('P-1');
    const plan = await open(`${url}/plan`);
    expect(plan).toContain('Rated too low: has 450');
    expect(plan).toMatch(/Hire 2 rated at least/);
    const pinned = {
      version: '1',
      choice: 'pin',
      lineKey: 'panelLifter',
      tag: 'pl 32',
      reason: 'nearest the door',
    };
    await send(`${url}/plan/choices`, pinned).expect(303);
    expect((await send(`${url}/plan/choices`, pinned).expect(412)).text).toContain(
      'Someone else changed this meanwhile',
    );
    expect(await open(`${url}/plan`)).toContain('nearest the door');
    await send(`${url}/plan/choices`, { version: '2', choice: 'none', itemId: String(spare.id) }).expect(303);
    await send(`${url}/plan/reservation`, { version: '3' }).expect(303).expect('location', url);
    expect(await open(`${url}/hand-out`)).toMatch(/autofocus/);
    const wrong = await send(`${url}/hand-out`, { tag: 'PL-32' }).expect(409);
    expect(wrong.text).toContain('Take PL-32 instead of PL-31');
    expect((await send(`${url}/hand-out`, { tag: 'PL-33' }).expect(409)).text).toContain('Rated too low');
    const gone = await send(`${url}/hand-out`, { tag: first.tag }).expect(303);
    expect(await open(gone.headers['location'] ?? '')).toContain('PL-31 is out');
    expect(
      (await send(`${url}/bring-back`, { tag: first.tag, condition: 'damaged' }).expect(400)).text,
    ).toContain('remarks');
    await send(`${url}/bring-back`, { tag: first.tag, condition: 'missing' }).expect(303);
    expect(await open(`${url}/bring-back`)).toContain('PL-31 was found');
    await send(`${url}/found`, { itemId: String(first.id) }).expect(303);
    expect(await open(url)).toContain('back');
  });

  it('edits a job, takes a pasted schedule, and shows what the change breaks', async () => {
    await yard.gear('PL-41', { rating: ['478', 'kg'] });
    const made = await send(
      '/jobs',
      newJob({ reference: 'P-2', loadOutDay: yard.day(40), backDay: yard.day(41) }),
    ).expect(303);
    const url = made.headers['location'] ?? '';
    await send(`${url}/plan/reservation`, { version: '1' }).expect(303);
    expect(await open(`${url}/edit`)).toContain('Changes to the gear lines');
    const panelsCsv = 'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty\nB1,7450,1210,112,479,3\n';
    const wanted = {
      version: '1',
      'adjustments[0].lineKey': 'panelLifter',
      'adjustments[0].ratingUnit': 'kg',
      panelsCsv,
    };
    const loadOutDay = yard.day(40);
    await send(
      `${url}/edit`,
      newJob({ reference: 'P-2', loadOutDay, backDay: yard.day(41), ...wanted }),
    ).expect(303);
    const sheet = await open(url);
    expect(sheet).toContain('The booking needs a second look');
    expect(sheet).toContain('PL-41');
    expect(await open('/jobs')).toMatch(/\d flags?</);
    const bad = await send(
      `${url}/edit`,
      newJob({ reference: 'P-2', loadOutDay, backDay: yard.day(41), version: '2', panelsCsv: 'a,b\n1,2\n' }),
    );
    expect(bad.status).toBe(422);
    await send(`${url}/cancel`, { version: '2' }).expect(303);
    expect(await open(url)).toContain('cancelled');
  });

  it('takes a schedule from a file', async () => {
    const made = await send('/jobs', newJob({ reference: 'P-3' })).expect(303);
    const url = made.headers['location'] ?? '';
    const upload = (file: string) =>
      yard.storeman.post(`${url}/panels?version=1`).attach('file', Buffer.from(file), 'panels.csv');
    expect((await upload('Panel,Height (mm)\nC1,oops\n').expect(422)).text).toContain('No column reads as');
    const csv = 'Panel,Height (mm),Width (mm),Thickness (mm),Mass (kg),Qty\nC1,7450,1210,112,512,3\n';
    await upload(csv).expect(303).expect('location', url);
    expect(await open(url)).toContain('512');
  });

  it('takes a schedule from a workbook, and from semicolons in Latin-1', async () => {
    const made = await send('/jobs', newJob({ reference: 'P-4' })).expect(303);
    const url = made.headers['location'] ?? '';
    const upload = (version: number, bytes: Buffer, name: string) =>
      yard.storeman.post(`${url}/panels?version=${version}`).attach('file', bytes, name);
    const text = (at: string, value: string) => `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;
    const number = (at: string, value: string) => `<c r="${at}"><v>${value}</v></c>`;
    const headings = ['Panel', 'Height (mm)', 'Width (mm)', 'Thickness (mm)', 'Mass (kg)', 'Qty'];
    const sheet = (mass: string) =>
      `<row r="1">${headings.map((heading, column) => text(`${'ABCDEF'[column]}1`, heading)).join('')}</row>` +
      `<row r="2">${text('A2', 'D1')}${number('B2', '7450')}${number('C2', '1210')}${number('D2', '112')}` +
      `${mass}${number('F2', '3')}</row>`;
    await upload(1, workbook(sheet(number('E2', '513.5'))), 'panels.xlsx').expect(303);
    expect(await open(url)).toContain('513.5');
    const summed = workbook(sheet('<c r="E2"><f>500+14</f><v>514</v></c>'));
    expect((await upload(2, summed, 'panels.xlsx').expect(400)).text).toContain('is a formula');
    const latin = 'Panel;Height (mm);Width (mm);Thickness (mm);Mass (kg);Qty\nFlügel;7450;1210;112;515,5;3\n';
    await upload(2, Buffer.from(latin, 'latin1'), 'panels.csv').expect(303);
    expect(await open(url)).toContain('Flügel');
    expect(await open(url)).toContain('515.5');
  });

  it('keeps the counter to those who keep the store', async () => {
    const status = async (path: string) => (await yard.crew.get(path)).status;
    expect(await status('/jobs')).toBe(200);
    expect(await status('/jobs/1/hand-out')).toBe(403);
    expect(await status('/jobs/99999/plan')).toBe(404);
    expect(await status('/jobs/99999999999/plan')).toBe(404);
  });
});
