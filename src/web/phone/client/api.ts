/** How a request ended, as far as the queue is concerned. */
export type Answer<Body> =
  | { readonly kind: 'taken'; readonly body: Body }
  /** The server had it before; its first answer is lost. */
  | { readonly kind: 'hadBefore' }
  | { readonly kind: 'refused'; readonly words: string }
  | { readonly kind: 'signInFirst' }
  | { readonly kind: 'unreachable'; readonly words: string };

const SHORT_MS = 20_000;
const PHOTO_MS = 120_000;

/** Too early, too many, or asked to wait: nothing is wrong with what was sent. */
const TRY_LATER: ReadonlySet<number> = new Set([408, 425, 429]);

/** Reads something. */
export function read<Body>(path: string): Promise<Answer<Body>> {
  return ask(path, { method: 'GET' }, SHORT_MS);
}

/** Sends JSON that takes effect once for its key. */
export function send<Body>(path: string, key: string, body: object): Promise<Answer<Body>> {
  const headers = { 'content-type': 'application/json', 'idempotency-key': key };
  return ask(path, { method: 'POST', headers, body: JSON.stringify(body) }, SHORT_MS);
}

/** Sends a form with a file that takes effect once for its key. */
export function sendForm<Body>(path: string, key: string, form: FormData): Promise<Answer<Body>> {
  return ask(path, { method: 'POST', headers: { 'idempotency-key': key }, body: form }, PHOTO_MS);
}

async function ask<Body>(path: string, request: RequestInit, withinMs: number): Promise<Answer<Body>> {
  try {
    // The sign-in page of a strange network would come by a redirect, and as HTML: neither is an answer.
    const answer = await fetch(path, {
      ...request,
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(withinMs),
    });
    const body: unknown = answer.headers.get('content-type')?.includes('json')
      ? await answer.json()
      : undefined;
    return understand<Body>(answer, body);
  } catch {
    return { kind: 'unreachable', words: 'No answer from the server: no signal, or it is down.' };
  }
}

function understand<Body>({ ok, status }: Response, body: unknown): Answer<Body> {
  if (ok && body !== undefined) return { kind: 'taken', body: body as Body };
  if (status === 401) return { kind: 'signInFirst' };
  if (member(body, 'code') === 'already_done') return { kind: 'hadBefore' };
  const isRefusal = status >= 400 && status < 500 && !TRY_LATER.has(status) && body !== undefined;
  if (isRefusal) return { kind: 'refused', words: problemWords(body) };
  return { kind: 'unreachable', words: `The server cannot take it now (${status}).` };
}

/** Problem details (RFC 9457) as a person reads them. */
function problemWords(problem: unknown): string {
  const errors = member(problem, 'errors');
  const faults = Array.isArray(errors) ? errors.map((fault: unknown) => member(fault, 'message')) : [];
  return [member(problem, 'title'), member(problem, 'detail'), ...faults, member(problem, 'next')]
    .filter((words) => typeof words === 'string' && words !== '')
    .join(' ');
}

function member(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;
}
