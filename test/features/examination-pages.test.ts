import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { addDays, addMonths } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { examination, worn } from '../support/example-examination.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

const today = new Clock().today('Europe/London');

/** The fields of a page's first form that posts to an address ending so. */
function fieldsOf(html: string, action: string): Record<string, string> {
  const [form = ''] = new RegExp(`<form[^>]*action="[^"]*${action}".*?</form>`, 's').exec(html) ?? [];
  const inputs = [...form.matchAll(/<input type="hidden" name="([^"]+)" value="([^"]*)"/g)];
  return Object.fromEntries(
    inputs.map(([, name = '', value = '']) => [name, value.replaceAll('&quot;', '"')]),
  );
}

/** The same answers as a form sends them: all texts. */
function asForm(tag: string, changes: object = {}): Record<string, string> {
  const { declared: _, ...answers } = examination(tag, today, changes);
  return Object.fromEntries(Object.entries(answers).map(([name, value]) => [name, String(value)]));
}

const lines = (what: string) => `${what}\nsecond line`;

/** Answers of several lines wherever a report takes them. */
const longAnswers = (tag: string) => ({
  employerAddress: lines('4 Slipway'),
  premisesAddress: lines('Yard'),
  identification: lines(tag),
  safeWorkingLoad: lines('500 kg'),
  dependsOnConfiguration: true,
  configuration: lines('two arms'),
  tests: lines('125 %'),
  examinerAddress: lines('9 Ropewalk'),
  examinerQualifications: lines('examiner'),
  selfEmployed: false,
  examinerEmployerName: 'Ropewalk Examinations',
  examinerEmployerAddress: lines('10 Ropewalk'),
  signerAddress: lines('11 Ropewalk'),
});

describe.each(ENGINES)('the pages of an examination on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  it('start with what is on record, and with what the examiner wrote last', async () => {
    const item = await server.newItem({ manufacturedOn: '2024-01-02' });
    const first = await server.examiner.get(`/register/${item.id}/examination`).expect(200);
    for (const known of [item.tag, 'Harrow Works', '2024-01-02', 'Yard, 1 Quay', today])
      expect(first.text).toContain(known);
    expect(first.text).not.toContain('9 Ropewalk');
    await server.examiner
      .post(`/api/items/${item.id}/examinations`)
      .send(examination(item.tag, today))
      .expect(201);
    const second = await server.examiner.get(`/register/${item.id}/examination`).expect(200);
    expect(second.text).toContain('9 Ropewalk');
    expect(second.text).toContain('Marram Facades');
    const other = await server.secondExaminer.get(`/register/${item.id}/examination`).expect(200);
    expect(other.text).not.toContain('9 Ropewalk');
  });

  it('show the whole report before it is signed, sign it once, and end on it', async () => {
    const item = await server.newItem();
    const path = `/register/${item.id}/examination`;
    const wrong = await server.examiner
      .post(`${path}/check`)
      .type('form')
      .send(asForm(item.tag, { employerName: '' }))
      .expect(400);
    expect(wrong.text).toContain('paragraph 1: fill this in');
    expect(wrong.text).toContain('9 Ropewalk');
    const shown = await server.examiner.post(`${path}/check`).type('form').send(asForm(item.tag)).expect(200);
    for (const number of ['1', '6(a)', '7(b)', '8(d)', '10', '11'])
      expect(shown.text).toContain(`>${number}</span>`);
    expect(shown.text).toContain('Not signed yet');
    expect((await server.crew.get(`/api/items/${item.id}/inspections`)).body).toEqual([]);
    const fields = fieldsOf(shown.text, '/examination');
    const unsaid = await server.examiner.post(path).type('form').send(fields).expect(400);
    expect(unsaid.text).toContain('declared');
    const signed = { ...fields, declared: 'true' };
    const done = await server.examiner.post(path).type('form').send(signed).expect(303);
    const report = await server.crew.get(String(done.headers['location'])).expect(200);
    expect(report.text).toContain('Report of thorough examination TE-');
    expect(report.text).toContain('as the ledger has it');
    await server.examiner.post(path).type('form').send(signed);
    expect((await server.crew.get(`/api/items/${item.id}/inspections`)).body).toHaveLength(1);
    const page = await server.crew.get(`/register/${item.id}`).expect(200);
    expect(page.text).toContain(String(done.headers['location']));
  });

  it('carry the rows of the defects to the signature and back to the form', async () => {
    const item = await server.newItem();
    const path = `/register/${item.id}/examination`;
    const by = addDays(today, 30);
    const form = {
      ...asForm(item.tag, { noDefect: '' }),
      'defects[1].part': 'pad "left"',
      'defects[1].description': 'worn',
      'defects[1].danger': 'couldBecome',
      'defects[1].by': by,
      'defects[1].remedy': 'renew it',
    };
    const shown = await server.examiner.post(`${path}/check`).type('form').send(form).expect(200);
    const again = await server.examiner
      .post(`${path}/again`)
      .type('form')
      .send(fieldsOf(shown.text, '/again'))
      .expect(200);
    expect(again.text).toContain('value="pad &quot;left&quot;"');
    const fields = { ...fieldsOf(shown.text, '/examination'), declared: 'true' };
    await server.examiner.post(path).type('form').send(fields).expect(303);
    const { body } = await server.crew.get(`/api/items/${item.id}/due`).expect(200);
    expect(body.defectDeadline).toBe(by);
  });

  it('keep the line breaks of long answers from a report of the API to its correction, and one defect one', async () => {
    const item = await server.newItem();
    const [defect] = worn(today, 30).defects;
    const long = longAnswers(item.tag);
    const worded = { ...defect, description: lines('worn'), remedy: lines('renew it') };
    const answers = { ...long, noTest: undefined, noDefect: false, defects: [worded] };
    const made = await server.examiner
      .post(`/api/items/${item.id}/examinations`)
      .send(examination(item.tag, today, answers))
      .expect(201);
    const { inspectionId } = made.body.examination;
    const path = `/register/${item.id}/examination`;
    const { text } = await server.examiner.get(`${path}?supersedesId=${inspectionId}`).expect(200);
    for (const [name, value] of Object.entries({ ...long, 'defects[0].description': worded.description })) {
      if (!String(value).includes('\n')) continue;
      const area = new RegExp(
        `<textarea[^>]*name="${name.replace(/[[\].]/g, '\\$&')}"[^>]*>([^<]*)</textarea>`,
      );
      expect(area.exec(text)?.[1]).toBe(value);
    }
    // A browser sends every line break of a form as CR LF: WHATWG HTML, 'convert to a list of name-value pairs' (from memory).
    const sent = asForm(item.tag, { ...long, noTest: '', noDefect: '', supersedesId: inspectionId });
    const rows = Object.entries(worded).map(([name, value]) => [`defects[0].${name}`, value]);
    const form = Object.entries({ ...sent, ...Object.fromEntries(rows), declared: 'true' });
    const broken = form.map(([name, value]) => [name, String(value).replaceAll('\n', '\r\n')]);
    const fields = Object.fromEntries(broken.filter(([, value]) => value !== ''));
    const signed = await server.examiner.post(path).type('form').send(fields).expect(303);
    const after = await server.crew.get(`/api${String(signed.headers['location'])}`).expect(200);
    expect(after.body.particulars).toEqual(made.body.examination.particulars);
    expect((await server.crew.get(`/api/items/${item.id}/defects`)).body).toHaveLength(1);
  });

  it('offer a correction with all particulars of the report', async () => {
    const item = await server.newItem();
    const made = await server.examiner
      .post(`/api/items/${item.id}/examinations`)
      .send(examination(item.tag, today, { nextExaminationBy: addMonths(today, 5) }))
      .expect(201);
    const { inspectionId, id } = made.body.examination;
    const report = await server.examiner.get(`/examinations/${id}`).expect(200);
    const path = `/register/${item.id}/examination?supersedesId=${inspectionId}`;
    expect(report.text).toContain(path.replace('&', '&amp;'));
    expect((await server.crew.get(`/examinations/${id}`)).text).not.toContain('supersedesId');
    const form = await server.examiner.get(path).expect(200);
    expect(form.text).toContain(`Correct the examination of record ${inspectionId}`);
    expect(form.text).toContain(addMonths(today, 5));
    expect(form.text).toContain(`name="supersedesId" value="${inspectionId}"`);
  });

  it('say where the list comes from in a place that has none of its own on record', async () => {
    const store = { name: 'Dock', address: '3 Pier', scheme: 'us', timeZone: 'America/New_York' };
    const { body } = await server.manager.post('/api/stores').send(store).expect(201);
    const item = await server.newItem({ storeId: body.id });
    const form = await server.examiner.get(`/register/${item.id}/examination`).expect(200);
    expect(form.text).toContain('the law of Great Britain');
    expect(form.text).toContain('Paragraphs 8(e) carry it');
  });
});
