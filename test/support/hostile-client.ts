import { randomUUID } from 'node:crypto';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { PeopleService } from '../../src/people/people.service.js';
import type { Role } from '../../src/people/role.js';
import { SESSION_COOKIE } from '../../src/people/session-cookie.js';
import { SessionsService } from '../../src/people/sessions.service.js';

/** An answer of the server, as far as these tests look at it. */
export interface RawAnswer {
  readonly status: number;
  readonly contentType: string;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly text: string;
}

/** A request to send just as it is written. */
export interface RawRequest {
  readonly method: 'GET' | 'POST' | 'PATCH';
  readonly url: string;
  readonly headers?: Record<string, string>;
  readonly payload?: string | Buffer;
}

/** A person that is signed in, and sends requests without a network between. */
export interface HostileClient {
  readonly personId: number;
  readonly signInName: string;
  readonly cookie: string;
  raw(request: RawRequest): Promise<RawAnswer>;
  /** Sends a body as JSON. */
  json(
    method: 'POST' | 'PATCH',
    url: string,
    body: unknown,
    headers?: Record<string, string>,
  ): Promise<RawAnswer>;
  /** Sends fields as a browser sends a form. */
  form(url: string, fields: readonly (readonly [string, string])[]): Promise<RawAnswer>;
}

const PASSWORD = 'a long enough password';

/** Makes an account with these roles and signs it in. */
export async function hostileClient(app: NestFastifyApplication, roles: Role[]): Promise<HostileClient> {
  const signInName = `h${randomUUID()}`;
  const account = { name: 'Clumsy', signInName, password: PASSWORD, roles };
  const { id } = await app.get(PeopleService).create(SYSTEM_ACTOR, account);
  const { token } = await app.get(SessionsService).signIn(signInName, PASSWORD);
  const cookie = `${SESSION_COOKIE}=${token}`;
  const raw = async ({ headers, ...request }: RawRequest): Promise<RawAnswer> => {
    const answer = await app.inject({ ...request, headers: { cookie, ...headers } });
    const contentType = String(answer.headers['content-type'] ?? '');
    return { status: answer.statusCode, contentType, headers: answer.headers, text: answer.body };
  };
  return {
    personId: id,
    signInName,
    cookie,
    raw,
    json: (method, url, body, headers = {}) =>
      raw({
        method,
        url,
        headers: { 'content-type': 'application/json', ...headers },
        payload: JSON.stringify(body),
      }),
    form: (url, fields) =>
      raw({
        method: 'POST',
        url,
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
        payload: fields.map((pair) => pair.map(encodeURIComponent).join('=')).join('&'),
      }),
  };
}
