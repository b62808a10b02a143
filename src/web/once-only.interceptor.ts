import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { defer, from, lastValueFrom, type Observable } from 'rxjs';
import { digestOf, MOST_FILE_BYTES, receivedForm } from '../http/received-form.js';
import { RequestClaims, type Answer } from '../ledger/request-claims.service.js';
import { onceOnlyRequest, RequestRepeated } from '../ledger/request-once.js';
import { actorOf } from '../people/access.js';

/**
 * Makes a request that carries an Idempotency-Key (or a form that carries `_once`) take effect once. Sent again,
 * it gets the first answer again.
 */
@Injectable()
export class OnceOnlyInterceptor implements NestInterceptor {
  constructor(
    private readonly claims: RequestClaims,
    private readonly reflector: Reflector,
  ) {}

  async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
    const http = context.switchToHttp();
    const [request, reply] = [http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>()];
    if (request.method === 'GET') return next.handle();
    const body = await this.bodyOf(request, context);
    const key = keyOf(request, body);
    if (!key) return next.handle();
    const { method, url } = request;
    const asked = { method, url, body };
    const once = this.claims.describe({ key, personId: actorOf(request)?.id ?? null, request: asked });
    const earlier = await this.claims.answerOf(once);
    if (earlier) return from(replay(reply, earlier));
    return defer(() =>
      onceOnlyRequest.run(once, async () => {
        try {
          const body: unknown = await lastValueFrom(next.handle(), { defaultValue: undefined });
          if (once.claimed) await this.claims.keepAnswer(once, answerFrom(reply, body));
          return body;
        } catch (error) {
          const answered = error instanceof RequestRepeated ? await this.claims.answerOf(once) : undefined;
          if (!answered) throw error;
          return replay(reply, answered);
        }
      }),
    );
  }

  /** The body; of a form with a file, its fields and the file's hash. One that cannot be read is left for the handler to refuse. */
  private async bodyOf(request: FastifyRequest, context: ExecutionContext): Promise<unknown> {
    const mostBytes = this.reflector.get<number | undefined>(MOST_FILE_BYTES, context.getHandler());
    if (mostBytes === undefined) return request.body;
    try {
      return digestOf(await receivedForm(request, mostBytes));
    } catch {
      return request.body;
    }
  }
}

function keyOf(request: FastifyRequest, body: unknown): string | undefined {
  const header = request.headers['idempotency-key'];
  if (typeof header === 'string') return header.replace(/^"(.*)"$/, '$1');
  const fields = request.isMultipart() && isRecord(body) ? body['fields'] : body;
  const field = isRecord(fields) ? fields['_once'] : undefined;
  return typeof field === 'string' && field !== '' ? field : undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function answerFrom(reply: FastifyReply, body: unknown): Answer {
  const location = reply.getHeader('location');
  const etag = reply.getHeader('etag');
  return {
    status: reply.statusCode,
    ...(typeof location === 'string' ? { location } : {}),
    ...(typeof etag === 'string' ? { etag } : {}),
    ...(reply.sent || body === undefined ? {} : { body }),
  };
}

async function replay(reply: FastifyReply, answer: Answer): Promise<unknown> {
  if (answer.location) {
    await reply.redirect(answer.location, answer.status);
    return undefined;
  }
  if (answer.etag) reply.header('etag', answer.etag);
  reply.status(answer.status);
  return answer.body;
}
