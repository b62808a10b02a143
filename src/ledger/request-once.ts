import { AsyncLocalStorage } from 'node:async_hooks';
import type { EntityManager } from 'typeorm';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { RequestClaimEntity } from './request-claim.entity.js';

/** A request that carries an Idempotency-Key, while it is being answered. */
export interface OnceOnlyRequest {
  readonly id: string;
  readonly requestHash: string;
  /** True once its first change is committed. */
  claimed: boolean;
}

/** Thrown inside the transaction when the same request has taken effect already. */
export class RequestRepeated extends Error {}

/** The request being answered, where it carries a key. */
export const onceOnlyRequest = new AsyncLocalStorage<OnceOnlyRequest>();

/**
 * Marks the current request as done, in the transaction of its first effect. Of two that race, the second
 * waits for the first to commit and is then refused.
 * @throws RequestRepeated when it was marked before.
 */
export async function claimRequest(manager: EntityManager, at: string): Promise<void> {
  const request = onceOnlyRequest.getStore();
  if (!request || request.claimed) return;
  try {
    await manager.insert(RequestClaimEntity, {
      id: request.id,
      requestHash: request.requestHash,
      answer: null,
      claimedAt: at,
    });
  } catch (error) {
    throw isUniqueViolation(error) ? new RequestRepeated() : error;
  }
}

/** Says that the claim is committed: further changes of the same request belong to it. */
export function keepClaim(): void {
  const request = onceOnlyRequest.getStore();
  if (request) request.claimed = true;
}
