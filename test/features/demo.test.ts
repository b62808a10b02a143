import 'reflect-metadata';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import request from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DemoScenario } from '../../src/demo/demo-scenario.js';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { createApp } from '../../src/web/create-app.js';
import { freshDatabase } from '../support/engines.js';

describe('the demo scenario', () => {
  let app: NestFastifyApplication;
  let remove: () => Promise<void>;
  let storeman: TestAgent;

  beforeAll(async () => {
    const database = await freshDatabase('sqlite');
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

  it('lets everyone sign in who is listed on the sign-in page', async () => {
    const page = await request(app.getHttpServer()).get('/sign-in').expect(200);
    for (const { signInName, password } of DEMO_ACCOUNTS) {
      expect(page.text).toContain(password);
      await request(app.getHttpServer()).post('/api/session').send({ signInName, password }).expect(204);
    }
  });

  it('has a job that can be met, one that is short, one out and flagged, and one that is past', async () => {
    const { body } = await storeman.get('/api/jobs').expect(200);
    const byReference = new Map(body.jobs.map((job: { reference: string }) => [job.reference, job]));
    expect(byReference.get('LM-2036')).toMatchObject({ state: 'back' });
    expect(byReference.get('LM-2042')).toMatchObject({ state: 'out', flagged: 1 });
    const canBeMet = byReference.get('LM-2047') as { id: number };
    const short = byReference.get('LM-2051') as { id: number };
    const met = await storeman.get(`/api/jobs/${canBeMet.id}/proposal`).expect(200);
    expect(met.body.lines.every((line: { missing: number }) => line.missing === 0)).toBe(true);
    const lacking = await storeman.get(`/api/jobs/${short.id}/proposal`).expect(200);
    const shortLines = lacking.body.lines.filter((each: { missing: number }) => each.missing > 0);
    expect(shortLines.map((each: { line: { key: string } }) => each.line.key)).toContain('panelLifter');
    expect(JSON.stringify(met.body)).toContain('promised_elsewhere');
  });

  it('has items in every condition', async () => {
    for (const condition of ['quarantined', 'underRepair', 'scrapped']) {
      const { body } = await storeman.get(`/api/items?condition=${condition}`).expect(200);
      expect(body.items.length, condition).toBeGreaterThan(0);
    }
  });

  it('has a history that holds', async () => {
    expect((await app.get(Ledger).verify()).fault).toBeUndefined();
  });
});
