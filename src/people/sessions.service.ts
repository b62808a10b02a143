import { Injectable } from '@nestjs/common';
import { createHash, randomBytes } from 'node:crypto';
import { LessThan } from 'typeorm';
import { Clock } from '../clock.js';
import { Problem } from '../problem.js';
import { Reads } from '../storage/reads.js';
import { UnitOfWork } from '../storage/unit-of-work.js';
import type { Actor } from './actor.js';
import { isPassword, NOBODYS_HASH } from './password.js';
import { PersonEntity } from './person.entity.js';
import { SessionEntity } from './session.entity.js';

const MINUTE_MS = 60_000;
const IDLE_MS = 12 * 60 * MINUTE_MS; // one long shift

/** A session ends so long after its sign-in, however much it is used. */
export const LONGEST_SESSION_MS = 7 * 24 * 60 * MINUTE_MS;

/** Sign-in, sign-out and who a request comes from. Sessions are kept on the server, so that they can be ended. */
@Injectable()
export class SessionsService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    private readonly clock: Clock,
  ) {}

  /**
   * Checks name and password and opens a session. Gives the token for the cookie: 256 random bits. The session of
   * `formerToken`, which the same browser held until now, ends with it (OWASP ASVS 5.0, 7.2.4): a phone passes from
   * hand to hand.
   * @throws Problem `wrong_sign_in`, the same whether the name or the password is wrong.
   */
  async signIn(
    signInName: string,
    password: string,
    formerToken?: string,
  ): Promise<{ token: string; actor: Actor }> {
    const person = await this.reads.manager.findOneBy(PersonEntity, { signInName: signInName.toLowerCase() });
    const matches = await isPassword(password, person?.passwordHash ?? (await NOBODYS_HASH));
    if (!person?.active || !matches)
      throw new Problem('wrong_sign_in', 'No open account has that name and password.');
    const token = randomBytes(32).toString('base64url');
    const at = this.clock.now();
    await this.unitOfWork.run(async (manager) => {
      await manager.delete(SessionEntity, { createdAt: LessThan(before(at, LONGEST_SESSION_MS)) });
      if (formerToken) await manager.delete(SessionEntity, { tokenHash: hashToken(formerToken) });
      const session = { tokenHash: hashToken(token), personId: person.id, createdAt: at, lastSeenAt: at };
      await manager.insert(SessionEntity, session);
    });
    return { token, actor: person };
  }

  /** Ends the session of this token, if there is one. */
  async signOut(token: string): Promise<void> {
    await this.unitOfWork.run((manager) => manager.delete(SessionEntity, { tokenHash: hashToken(token) }));
  }

  /** Who holds this token, or undefined when it has run out, was ended, or never was. */
  async whoIs(token: string): Promise<Actor | undefined> {
    const at = this.clock.now();
    const session = await this.reads.manager.findOne(SessionEntity, {
      where: { tokenHash: hashToken(token) },
      relations: { person: true },
    });
    if (!session?.person?.active) return undefined;
    if (session.lastSeenAt < before(at, IDLE_MS) || session.createdAt < before(at, LONGEST_SESSION_MS))
      return undefined;
    if (session.lastSeenAt < before(at, 10 * MINUTE_MS)) await this.keepAlive(session.tokenHash, at);
    const { id, name, roles } = session.person;
    return { id, name, roles };
  }

  private async keepAlive(tokenHash: string, lastSeenAt: string): Promise<void> {
    await this.unitOfWork.run((manager) => manager.update(SessionEntity, { tokenHash }, { lastSeenAt }));
  }
}

function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

function before(instant: string, milliseconds: number): string {
  return new Date(Date.parse(instant) - milliseconds).toISOString();
}
