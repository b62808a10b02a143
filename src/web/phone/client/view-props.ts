import type { Phone } from './phone.js';

/** What every view is given. */
export interface ViewProps {
  readonly phone: Phone;
  /** Tries to send what waits. */
  readonly send: () => Promise<void>;
}
