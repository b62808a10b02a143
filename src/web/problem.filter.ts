import { Catch, HttpException, Logger, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { RequestRepeated } from '../ledger/request-once.js';
import { actorOf } from '../people/access.js';
import { Problem, PROBLEMS, type ProblemCode } from '../problem.js';
import { problemPage } from './problem-page.js';

/** Turns whatever was thrown into problem details (RFC 9457) for the API, and into a page for people. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger('Problem');

  async catch(error: unknown, host: ArgumentsHost): Promise<void> {
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const problem = this.asProblem(error);
    const { status } = PROBLEMS[problem.code];
    if (request.url.startsWith('/api')) {
      await reply.status(status).type('application/problem+json').send(problemDetails(problem, request.url));
      return;
    }
    if (problem.code === 'sign_in_first' && request.method === 'GET') {
      await reply.redirect(`/sign-in?then=${encodeURIComponent(request.url)}`, 303);
      return;
    }
    const html = problemPage(problem, { actor: actorOf(request), path: request.url });
    await reply.status(status).type('text/html; charset=utf-8').send(html);
  }

  private asProblem(error: unknown): Problem {
    if (error instanceof Problem) return error;
    if (error instanceof RequestRepeated)
      return new Problem('already_done', 'The same request took effect before.');
    const status = statusOf(error);
    if (status === 404) return new Problem('not_found', 'There is no page or record at this address.');
    if (status === 413) return new Problem('file_too_large', 'What was sent is over the limit.');
    if (status !== undefined && status >= 400 && status < 500) {
      return new Problem('bad_input', error instanceof Error ? error.message : 'The request cannot be read.');
    }
    this.logger.error(error instanceof Error ? error.stack : error);
    return new Problem('internal', 'The mistake is in the server log.');
  }
}

/** The members of RFC 9457, and ours: `code`, `next`, and what the problem carries. */
function problemDetails(problem: Problem, instance: string): Record<string, unknown> {
  const { status, title, next } = PROBLEMS[problem.code];
  return {
    ...problem.more.members,
    type: problemType(problem.code),
    title,
    status,
    detail: problem.message,
    instance,
    code: problem.code,
    next,
    ...(problem.more.errors ? { errors: problem.more.errors } : {}),
  };
}

/** The URI that identifies a kind of problem. */
export function problemType(code: ProblemCode): string {
  return `urn:tackleroom:problem:${code}`;
}

function statusOf(error: unknown): number | undefined {
  if (error instanceof HttpException) return error.getStatus();
  const status: unknown =
    typeof error === 'object' && error !== null ? Reflect.get(error, 'statusCode') : undefined;
  return typeof status === 'number' ? status : undefined;
}
