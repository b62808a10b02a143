import { shortDay } from '../../src/web/sentences/words.js';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import type { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { UrgentSweep } from '../../src/reminders/urgent/urgent-sweep.service.js';
import { createApp } from '../../src/web/create-app.js';
import { ENGINES } from '../support/engines.js';
import { startMailYard, type MailReader, type MailYard } from '../support/mail-yard.js';

describe.each(ENGINES)('what is told at once on %s', (engine) => {
  let yard: MailYard;
  beforeAll(async () => {
    yard = await startMailYard(engine);
    for (const reader of ['storeman', 'manager'] as const) await yard.choose(reader, { digest: 'daily' });
    await yard.choose('crew', { urgent: false });
    await yard.choose('examiner', { urgent: false });
    await look();
  });
  afterAll(() => yard.close());

  const now = () => yard.app.get(Clock).now();
  const flat = ({ plainText }: MailEntity) => plainText.replace(/\s+/g, ' ');

  /** The urgent mails to someone of a look at an instant. */
  async function look(at = now(), reader: MailReader = 'storeman'): Promise<MailEntity[]> {
    const before = (await yard.mails(reader)).length;
    await yard.urgent(at);
    const mails = (await yard.mails(reader)).slice(before);
    expect(mails.every(({ kind }) => kind === 'urgent')).toBe(true);
    return mails;
  }

  const report = (id: number, description: string, severity: object = { severity: 'immediateDanger' }) =>
    yard.crew
      .post(`/api/items/${id}/defects`)
      .send({ description, ...severity })
      .expect(201);

  const release = (id: number) =>
    yard.secondExaminer
      .post(`/api/items/${id}/inspections`)
      .send({
        type: 'thoroughExamination',
        doneOn: yard.day(0),
        outcome: 'fit',
        release: true,
        reportNumber: `F-${id}`,
      })
      .expect(201);

  /** A job with one lifter reserved or out, and another that could take its place. */
  async function booked(name: string, { out = false, massKg = '478' } = {}) {
    const item = await yard.gear(`${name}-1`, { rating: [name.endsWith('L') ? '480' : '500', 'kg'] });
    const jobId = await yard.job({ reference: name, from: 0, to: 4, massKg });
    await yard.storeman.post(`/api/jobs/${jobId}/reservation`).expect(201);
    if (out) await yard.storeman.post(`/api/jobs/${jobId}/hand-outs`).send({ tag: item.tag }).expect(201);
    return { ...item, jobId, reference: name };
  }

  it('is a danger on a job: to storeman and manager, once, with the job and what to take instead', async () => {
    const { id, tag, jobId, reference } = await booked('DANGER', { out: true });
    const other = await yard.gear('SPARE-1');
    await report(id, 'crack in the jaw');
    const [mail, ...more] = await look();
    expect(more).toEqual([]);
    expect(mail?.subject).toBe(`Danger found on ${tag}, out on job ${reference}: take ${other.tag}`);
    const text = mail ? flat(mail) : '';
    expect(text).toContain('Person 2 found: crack in the jaw.');
    expect(text).toContain('A competent person has to examine it before anybody uses it again.');
    expect(text).toContain(`Out on job ${reference}, Marram Hall,`);
    expect(text).toContain(`exchange it for ${other.tag}, from Yard.`);
    expect(text).toContain(`/register/${id} `);
    expect(text).toContain(`/jobs/${jobId} `);
    expect(mail?.plainText.split(`* ${tag}`)).toHaveLength(2);
    expect((await yard.mails('manager')).at(-1)?.subject).toBe(mail?.subject);
    expect(await yard.mails('crew')).toEqual([]);
    expect(await yard.mails('examiner')).toEqual([]);
    expect(await look()).toEqual([]);
  });

  it('is gear that goes out of date on a job: when its day is over, once', async () => {
    const job = await booked('DATE', { out: true });
    const before = now();
    expect(await look(before)).toEqual([]);
    // GB, LOLER 1998 reg 9(3)(a): every six months for lifting accessories. The gear was examined ten days ago.
    const late = `${yard.day(200)}T12:00:00.000Z`;
    const [mail] = await look(late);
    expect(mail?.subject).toContain('booked items not fit');
    expect(mail && flat(mail)).toContain(`* ${job.tag}, panel lifter`);
    expect(mail && flat(mail)).toContain('Out of date: its thorough examination was due on');
    expect(await look(late)).toEqual([]);
    expect(await look(`${yard.day(201)}T12:00:00.000Z`)).toEqual([]);
  });

  it('is told again when what was mended fails again', async () => {
    await look();
    const { id, tag } = await booked('AGAIN');
    await report(id, 'worn');
    expect((await look())[0]?.subject).toContain(tag);
    await release(id);
    expect(await look()).toEqual([]);
    await report(id, 'worn once more');
    const [mail] = await look();
    expect(mail?.subject).toContain(tag);
    expect(mail && flat(mail)).toContain('worn once more');
    expect(mail && flat(mail)).not.toContain('found: worn.');
  });

  it('is booked gear that a heavier panel is too much for', async () => {
    const { tag, jobId, reference } = await booked('HEAVYL', { massKg: '460' });
    await look();
    const { headers, body } = await yard.storeman.get(`/api/jobs/${jobId}`).expect(200);
    const [panel] = body.panels;
    await yard.storeman
      .patch(`/api/jobs/${jobId}`)
      .set('if-match', String(headers['etag']))
      .send({ panels: [{ ...panel, massKg: '490' }] })
      .expect(200);
    const [mail] = await look();
    expect(mail?.subject).toContain(`${tag} is not fit for job ${reference}`);
    expect(mail && flat(mail)).toContain('Rated too low: has 480 kg, needs 490 kg.');
    expect(mail && flat(mail)).toContain(`Reserved for job ${reference}`);
  });

  it('is a danger from a named day on, but no observation', async () => {
    const { id, tag } = await yard.gear('NAMED-1');
    await report(id, 'muddy', { severity: 'observation' });
    expect(await look()).toEqual([]);
    await report(id, 'wearing thin', { severity: 'dangerByDate', lastDayOfUse: yard.day(5) });
    const [mail] = await look();
    expect(mail?.subject).toBe(`${tag} becomes a danger on a named day`);
    expect(mail && flat(mail)).toContain('Have it examined before that day');
    expect(mail && flat(mail)).toContain(`Its last day of use is ${shortDay(yard.day(5))}.`);
  });

  it('is one mail of all that is new', async () => {
    const items = [await yard.gear('MANY-1'), await yard.gear('MANY-2'), await yard.gear('MANY-3')];
    for (const { id } of items) await report(id, 'cut');
    const mails = await look();
    expect(mails).toHaveLength(1);
    expect(mails[0]?.subject).toBe('Danger found on 3 items');
    for (const { tag } of items) expect(mails[0]?.plainText).toContain(`* ${tag}`);
  });

  it('comes to others who switched it on, of dangers only', async () => {
    await yard.choose('crew', { urgent: true });
    const { id, tag, reference } = await booked('CREW');
    await report(id, 'bent');
    const [mail] = await look(now(), 'crew');
    expect(mail?.subject).toBe(`Danger found on ${tag}`);
    expect(mail?.plainText).not.toContain(reference + ',');
    await yard.choose('crew', { urgent: false });
  });

  it('comes to the managers all the same when nobody in charge has it switched on', async () => {
    for (const reader of ['storeman', 'manager'] as const) await yard.choose(reader, { urgent: false });
    const { id, tag } = await yard.gear('OFF-1');
    await report(id, 'split');
    expect((await look(now(), 'manager'))[0]?.subject).toBe(`Danger found on ${tag}`);
    expect((await yard.mails('storeman')).at(-1)?.subject).not.toContain(tag);
  });

  it('waits while nobody can be reached, and is old news after a week', async () => {
    for (const reader of ['storeman', 'manager'] as const) await yard.choose(reader, { address: null });
    const [first, second] = [await yard.gear('WAIT-1'), await yard.gear('WAIT-2')];
    await report(first.id, 'split');
    expect(await look(now(), 'manager')).toEqual([]);
    await yard.choose('manager', { urgent: true });
    expect((await look(now(), 'manager'))[0]?.subject).toBe(`Danger found on ${first.tag}`);
    await report(second.id, 'split');
    expect(
      await look(`${yard.day(8)}T12:00:00.000Z`, 'manager').then((mails) => mails.map(flat).join()),
    ).not.toContain(second.tag);
    expect(await look(now(), 'manager')).toEqual([]);
  });
});

describe('two servers on one PostgreSQL that see the same danger', () => {
  let yard: MailYard;
  let second: NestFastifyApplication;
  beforeAll(async () => {
    yard = await startMailYard('postgres');
    second = await createApp(yard.settings, { quiet: true });
    await second.init();
  });
  afterAll(async () => {
    await second.close();
    await yard.close();
  });

  it('tell it once', async () => {
    await yard.choose('storeman', {});
    const { id } = await yard.gear('BOTH-1');
    const jobId = await yard.job({ reference: 'BOTH', from: 0, to: 4 });
    await yard.storeman.post(`/api/jobs/${jobId}/reservation`).expect(201);
    await yard.crew
      .post(`/api/items/${id}/defects`)
      .send({ severity: 'immediateDanger', description: 'cut' })
      .expect(201);
    const sweep = (app: NestFastifyApplication) => app.get(UrgentSweep, { strict: false }).run();
    await Promise.all([sweep(yard.app), sweep(second)]);
    await Promise.all([sweep(yard.app), sweep(second)]);
    expect((await yard.mails('storeman')).map(({ subject }) => subject)).toEqual([
      'Danger found on BOTH-1, reserved for job BOTH',
    ]);
  });
});
