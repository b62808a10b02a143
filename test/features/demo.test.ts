import 'reflect-metadata';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import request from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DemoScenario } from '../../src/demo/demo-scenario.js';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { Calculations, type JobCalculation } from '../../src/jobs/calculation/calculations.service.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { Reads } from '../../src/storage/reads.js';
import { createApp } from '../../src/web/create-app.js';
import { ENGINES, freshDatabase } from '../support/engines.js';

describe.each(ENGINES)('the demo scenario on %s', (engine) => {
  let app: NestFastifyApplication;
  let remove: () => Promise<void>;
  let storeman: TestAgent;

  beforeAll(async () => {
    const database = await freshDatabase(engine);
    remove = database.remove;
    app = await createApp({ ...database.settings, demo: true }, { quiet: true });
    await app.init();
    await app.getHttpAdapter().getInstance().ready();
    await app.get(DemoScenario, { strict: false }).play();
    storeman = request.agent(app.getHttpServer());
    const [ines] = DEMO_ACCOUNTS;
    await storeman
      .post('/api/session')
      .send({ signInName: ines?.signInName, password: ines?.password })
      .expect(204);
  });
  afterAll(async () => {
    await app.close();
    await remove();
  });

  async function jobsByReference(): Promise<ReadonlyMap<string, Summary>> {
    const { body } = await storeman.get('/api/jobs').expect(200);
    const jobs: Summary[] = body.jobs;
    return new Map(jobs.map((job) => [job.reference, job]));
  }

  async function numberOf(reference: string): Promise<number> {
    const job = (await jobsByReference()).get(reference);
    if (!job) throw new Error(`The demo has no job ${reference}.`);
    return job.id;
  }

  async function proposal(reference: string): Promise<Proposal> {
    const { body } = await storeman.get(`/api/jobs/${await numberOf(reference)}/proposal`).expect(200);
    return body;
  }

  async function calculation(reference: string): Promise<JobCalculation> {
    return app.get(Calculations, { strict: false }).current(await numberOf(reference));
  }

  it('lets everyone sign in who is listed on the sign-in page', async () => {
    const page = await request(app.getHttpServer()).get('/sign-in').expect(200);
    for (const { signInName, password } of DEMO_ACCOUNTS) {
      expect(page.text).toContain(password);
      await request(app.getHttpServer()).post('/api/session').send({ signInName, password }).expect(204);
    }
  });

  it('has a job that can be met, one that is short, one out and flagged, one booked, and one past', async () => {
    const jobs = await jobsByReference();
    expect(jobs.get('LM-2036')).toMatchObject({ state: 'back' });
    expect(jobs.get('LM-2042')).toMatchObject({ state: 'out', flagged: 2 });
    expect(jobs.get('LM-2053')).toMatchObject({ state: 'reserved', flagged: 0 });
    const met = await proposal('LM-2047');
    expect(missing(met)).toEqual([]);
    expect(JSON.stringify(met)).toContain('promised_elsewhere');
    expect(missing(await proposal('LM-2051'))).toContain('panelLifter');
  });

  it('has a job that a visit saves, as the diary says', async () => {
    expect((await jobsByReference()).get('LM-2058')).toMatchObject({ state: 'reserved', flagged: 1 });
    const { body } = await storeman.get('/api/diary').expect(200);
    const [saving, ...others]: Visit[] = body.visits.filter(({ savesJobs }: Visit) => savesJobs.length > 0);
    expect(others).toEqual([]);
    expect(saving?.savesJobs.map(({ reference }) => reference)).toEqual(['LM-2058']);
    expect(saving?.itemIds.length).toBeGreaterThan(10);
    const { text } = await storeman.get('/diary').expect(200);
    expect(text.replace(/<[^>]*>/g, '')).toMatch(/ clears \d+ items and saves job LM-2058/);
  });

  it('refuses gear that does not fit, of every sort that a calculation asks for', async () => {
    const met = await proposal('LM-2047');
    expect(refusalsOf(met, { line: 'hostMachine', tag: 'HM-006' })).toEqual(['attachment_not_covered']);
    expect(refusalsOf(met, { line: 'hostMachine', tag: 'HM-007' })).toEqual(['residual_capacity_too_low']);
    expect(refusalsOf(met, { line: 'hostMachine', tag: 'HM-009' })).toEqual(['outside_hire']);
    expect(refusalsOf(met, { line: 'panelLifter', tag: 'PL-013' })).toEqual(['does_not_fit_panel']);
    expect(refusalsOf(met, { line: 'strapsRoundWidth', tag: 'RS-113' })).toEqual(['too_short']);
    expect(refusalsOf(met, { line: 'strapsUnderBottomRail', tag: 'RS-040' })).toEqual(['unknown_size']);
    expect(refusalsOf(met, { line: 'safetyLines', tag: 'SL-004' })).toEqual(['too_short']);
    expect(refusalsOf(met, { line: 'workPlatform', tag: 'WP-004' })).toEqual(['too_short']);
  });

  it('has two hired machines, each on hire for one job and not for another', async () => {
    const met = await proposal('LM-2047');
    const light = await proposal('LM-2053');
    expect(refusalsOf(met, { line: 'hostMachine', tag: 'HM-008' })).toEqual([]);
    expect(refusalsOf(light, { line: 'hostMachine', tag: 'HM-008' })).toEqual(['outside_hire']);
    expect(refusalsOf(light, { line: 'hostMachine', tag: 'HM-009' })).toEqual([]);
    expect(refusalsOf(light, { line: 'hostMachine', tag: 'HM-007' })).toEqual([]);
  });

  it('works out every job but one, which is told what it has yet to state', async () => {
    for (const reference of ['LM-2036', 'LM-2042', 'LM-2047', 'LM-2051', 'LM-2053']) {
      const { sheet, programme } = await calculation(reference);
      expect(
        sheet.sections.flatMap(({ problems }) => problems),
        reference,
      ).toEqual([]);
      expect(programme?.window.fits, reference).toBe(true);
    }
    const { sheet } = await calculation('LM-2056');
    const subjects = new Set(
      sheet.sections.flatMap(({ problems }) => problems.map(({ subject }) => subject)),
    );
    expect([...subjects].sort()).toEqual(['liftHeightM', 'lifterCentreMm', 'lifterMassKg']);
  });

  it('has a truck that is ordered too early for the trolleys', async () => {
    const { programme } = await calculation('LM-2047');
    expect(programme?.trucks.filter(({ exceedsLimit }) => exceedsLimit).map(({ truck }) => truck)).toEqual([
      2,
    ]);
  });

  it('has items in every condition', async () => {
    for (const condition of ['quarantined', 'underRepair', 'scrapped']) {
      const { body } = await storeman.get(`/api/items?condition=${condition}`).expect(200);
      expect(body.items.length, condition).toBeGreaterThan(0);
    }
  });

  it("has straps of makers' batches, and lifts counted on the job that is out", async () => {
    const { body: lot } = await storeman.get('/api/trace/batches/MP%207-322').expect(200);
    expect(lot).toMatchObject({ maker: 'Marlpit', makers: ['Marlpit'] });
    expect(lot.items.length).toBeGreaterThan(10);
    expect(new Set(lot.items.map(({ kind }: { kind: string }) => kind))).toEqual(new Set(['ratchetStrap']));
    const { body: lifts } = await storeman.get(`/api/jobs/${await numberOf('LM-2042')}/lifts`).expect(200);
    expect(lifts.days.map((day: { lifts: number }) => day.lifts)).toEqual([7, 15]);
    expect(lifts.total).toBe(22);
  });

  it('has told what falls due and what was found, in mail that lies in the local mailbox', async () => {
    const mails = await app.get(Reads).manager.find(MailEntity, { order: { id: 'ASC' } });
    const of = (kind: string) => mails.filter((mail) => mail.kind === kind);
    expect(of('digest').map(({ toName }) => toName)).toContain('Ines Okonjo');
    expect(
      of('urgent')
        .map(({ subject }) => subject)
        .join(),
    ).toContain('PT-004');
    expect(of('urgent').map(({ toName }) => toName)).toEqual(
      expect.arrayContaining(['Ines Okonjo', 'Piet Marlow']),
    );
    expect(new Set(mails.map(({ state }) => state))).toEqual(new Set(['sent']));
  });

  it('has a history that holds', async () => {
    expect((await app.get(Ledger).verify()).fault).toBeUndefined();
  });
});

interface Summary {
  readonly id: number;
  readonly reference: string;
}

interface Visit {
  readonly itemIds: readonly number[];
  readonly savesJobs: readonly { readonly reference: string }[];
}

interface Proposal {
  readonly lines: readonly {
    readonly line: { readonly key: string };
    readonly missing: number;
    readonly refused: readonly { readonly tag: string; readonly refusals: readonly { code: string }[] }[];
  }[];
}

/** The keys of the lines that are short. */
function missing({ lines }: Proposal): string[] {
  return lines.filter((each) => each.missing > 0).map(({ line }) => line.key);
}

/** The codes that an item is refused for on a line; none when it is fit. */
function refusalsOf({ lines }: Proposal, at: { line: string; tag: string }): string[] {
  const refused = lines.find(({ line }) => line.key === at.line)?.refused;
  if (!refused) throw new Error(`There is no line ${at.line}.`);
  return refused.find(({ tag }) => tag === at.tag)?.refusals.map(({ code }) => code) ?? [];
}
