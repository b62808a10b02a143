import { Controller, Get, Headers, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Public } from '../../people/access.js';
import { Problem } from '../../problem.js';
import { FeedReader } from './feed-reader.service.js';

/** What calendar programs read. They cannot sign in: whoever knows the address may read it. */
@Controller('calendar')
export class FeedController {
  constructor(private readonly reader: FeedReader) {}

  /** The calendar of a secret address. Every address that is not one gets the answer of any page that is not there. */
  @Public()
  @Get(':file')
  async read(
    @Param('file') file: string,
    @Headers('if-none-match') ifNoneMatch: string | undefined,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const calendar = await this.reader.open(file);
    if (!calendar) throw new Problem('not_found', 'There is no page or record at this address.');
    reply
      .header('etag', calendar.etag)
      .header('cache-control', 'private, no-cache')
      .header('x-robots-tag', 'noindex, nofollow')
      .header('referrer-policy', 'no-referrer');
    if (namesTag(ifNoneMatch, calendar.etag)) {
      await reply.status(304).send();
      return;
    }
    await reply
      .type('text/calendar; charset=utf-8')
      .header('content-disposition', 'inline; filename="tackleroom.ics"')
      .send(calendar.text);
  }
}

/** Whether the reader has this text already: RFC 9110 section 13.1.2, which compares tags by their letters alone. */
function namesTag(ifNoneMatch: string | undefined, etag: string): boolean {
  const tags = (ifNoneMatch ?? '').split(',').map((tag) => tag.trim().replace(/^W\//, ''));
  return tags.includes('*') || tags.includes(etag);
}
