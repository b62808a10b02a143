import type { FastifyReply } from 'fastify';
import { Problem, PROBLEMS } from '../problem.js';

/**
 * Answers a form: does the work and sends the browser on to where it says, or shows the form again with what
 * is wrong. Every form of every page is answered here.
 */
export async function answerForm(
  reply: FastifyReply,
  work: () => Promise<string>,
  again: (problem: Problem) => string | Promise<string>,
): Promise<void> {
  try {
    await reply.redirect(await work(), 303);
  } catch (error) {
    await showAgain(reply, error, again);
  }
}

/** Answers a form that only asks: shows the page that the work gives, or the form again with what is wrong. */
export async function answerQuestion(
  reply: FastifyReply,
  work: () => Promise<string>,
  again: (problem: Problem) => string | Promise<string>,
): Promise<void> {
  try {
    await answerPage(reply, await work());
  } catch (error) {
    await showAgain(reply, error, again);
  }
}

/** Sends a page. */
export async function answerPage(reply: FastifyReply, html: string): Promise<void> {
  await reply.type('text/html; charset=utf-8').send(html);
}

async function showAgain(
  reply: FastifyReply,
  error: unknown,
  again: (problem: Problem) => string | Promise<string>,
): Promise<void> {
  if (!(error instanceof Problem)) throw error;
  const html = await again(error);
  await reply.status(PROBLEMS[error.code].status).type('text/html; charset=utf-8').send(html);
}
