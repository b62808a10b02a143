import { Inject, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { SETTINGS, type Settings } from '../../settings.js';
import { feedPath } from './feed-secret.js';

/** Writes the address of a feed: the one that is set for the server, or the one that its page was opened at. */
@Injectable()
export class FeedAddress {
  constructor(@Inject(SETTINGS) private readonly settings: Settings) {}

  of({ protocol, host }: FastifyRequest, secret: string): string {
    return `${this.settings.publicUrl ?? `${protocol}://${host}`}${feedPath(secret)}`;
  }
}
