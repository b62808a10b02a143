import type { Role } from './role.js';

/** Who does something: a signed-in person, or Tackleroom itself (`id` null) at the command line. */
export interface Actor {
  readonly id: number | null;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** Tackleroom acting by itself: the command line, the first run, the demo. */
export const SYSTEM_ACTOR: Actor = { id: null, name: 'Tackleroom', roles: ['storeman', 'manager'] };
