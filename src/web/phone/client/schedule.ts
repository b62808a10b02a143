import type { Phone } from './phone.js';

const FIRST_PAUSE_MS = 4_000;
const LONGEST_PAUSE_MS = 60_000;

/**
 * Tries to send whenever there is hope: a signal comes back, the page is looked at again, something new was saved,
 * and in any case after a pause that doubles up to a minute. What a browser says about being online is a hint only: it
 * often comes a moment too early, so hope begins the pauses anew.
 */
export function keepSending(phone: Phone): () => Promise<void> {
  let pauseMs = FIRST_PAUSE_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const go = async (): Promise<void> => {
    clearTimeout(timer);
    const gotThrough = await phone.sendNow();
    clearTimeout(timer);
    timer = setTimeout(goIfWaiting, pauseMs);
    pauseMs = gotThrough ? FIRST_PAUSE_MS : Math.min(LONGEST_PAUSE_MS, pauseMs * 2);
  };
  const goIfWaiting = (): void => void (phone.hasWaiting ? go() : undefined);
  const hope = (): void => {
    pauseMs = FIRST_PAUSE_MS;
    goIfWaiting();
  };
  addEventListener('online', hope);
  addEventListener('pageshow', hope);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && hope());
  setInterval(goIfWaiting, LONGEST_PAUSE_MS);
  return go;
}
