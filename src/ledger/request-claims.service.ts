import { Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import { Problem } from '../problem.js';
import { Reads } from '../storage/reads.js';
import { UnitOfWork } from '../storage/unit-of-work.js';
import { RequestClaimEntity } from './request-claim.entity.js';
import type { OnceOnlyRequest } from './request-once.js';

const MOST_LOOKS = 40;
const PAUSE_MS = 50;

/** An answer as it is kept for the same request sent again. */
export interface Answer {
  readonly status: number;
  readonly location?: string;
  readonly etag?: string;
  readonly body?: unknown;
}

/** Looks up and keeps the answers of requests that take effect once. */
@Injectable()
export class RequestClaims {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
  ) {}

  /** The request by its key, its sender and what it asks. */
  describe(input: {
    key: string;
    personId: number | null;
    request: { method: string; url: string; body: unknown };
  }): OnceOnlyRequest {
    const { method, url, body } = input.request;
    return {
      id: sha256(`${input.personId ?? 'visitor'} ${input.key}`),
      requestHash: sha256(`${method} ${url} ${JSON.stringify(body ?? null)}`),
      claimed: false,
    };
  }

  /**
   * The answer the request got before, or undefined of a new one. While the first is still being answered, it waits.
   * @throws Problem `key_used_otherwise`, or `already_done` when it took effect but its answer was lost.
   */
  async answerOf(request: OnceOnlyRequest): Promise<Answer | undefined> {
    const claim = await this.settledClaim(request.id);
    if (!claim) return undefined;
    if (claim.requestHash !== request.requestHash) {
      throw new Problem('key_used_otherwise', 'The key belongs to a request with another address or body.');
    }
    if (claim.answer === null) throw new Problem('already_done', 'The same request took effect before.');
    return JSON.parse(claim.answer) as Answer;
  }

  /** The claim once its answer is known, or as it is after two seconds: then the answer was lost. */
  private async settledClaim(id: string): Promise<RequestClaimEntity | null> {
    for (let tries = 0; ; tries += 1) {
      const claim = await this.reads.manager.findOneBy(RequestClaimEntity, { id });
      if (!claim || claim.answer !== null || tries === MOST_LOOKS) return claim;
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    }
  }

  /** Keeps the answer of a request that has taken effect. */
  async keepAnswer(request: OnceOnlyRequest, answer: Answer): Promise<void> {
    await this.unitOfWork.run((manager) =>
      manager.update(RequestClaimEntity, { id: request.id }, { answer: JSON.stringify(answer) }),
    );
  }
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
