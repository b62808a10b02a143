import 'reflect-metadata';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import request from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import type { Role } from '../../src/people/role.js';
import { createApp } from '../../src/web/create-app.js';
import type { Settings } from '../../src/settings.js';
import { freshDatabase, type Engine } from './engines.js';

/** A whole server on a database of its own. */
export interface TestServer {
  readonly app: NestFastifyApplication;
  readonly settings: Settings;
  /** A browser-like client that is signed in as someone with these roles. */
  signedIn(...roles: Role[]): Promise<TestAgent>;
  /** A client that is not signed in. */
  visitor(): TestAgent;
  close(): Promise<void>;
}

const PASSWORD = 'test password of some length';

/** Starts the server as `npm start` does, on an empty database of the engine; `other` are settings that differ. */
export async function startServer(engine: Engine, other: Partial<Settings> = {}): Promise<TestServer> {
  const database = await freshDatabase(engine);
  const { remove } = database;
  const settings = { ...database.settings, ...other };
  const app = await createApp(settings, { quiet: true });
  await app.init();
  await app.getHttpAdapter().getInstance().ready();
  let people = 0;
  return {
    app,
    settings,
    visitor: () => request.agent(app.getHttpServer()),
    async signedIn(...roles) {
      people += 1;
      const signInName = `person${people}`;
      await app
        .get(PeopleService)
        .create(SYSTEM_ACTOR, { name: `Person ${people}`, signInName, password: PASSWORD, roles });
      const agent = request.agent(app.getHttpServer());
      await agent.post('/api/session').send({ signInName, password: PASSWORD }).expect(204);
      return agent;
    },
    async close() {
      await app.close();
      await remove();
    },
  };
}
