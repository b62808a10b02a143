import { Inject, Injectable } from '@nestjs/common';
import { SETTINGS, type Settings } from '../settings.js';
import type { Role } from './role.js';

/** A person of the demo scenario, with a password that everyone may know because the data is invented. */
export interface DemoAccount {
  readonly name: string;
  readonly signInName: string;
  readonly password: string;
  readonly roles: readonly Role[];
}

/** The people of the demo scenario. */
export const DEMO_ACCOUNTS: readonly DemoAccount[] = [
  { name: 'Ines Okonjo', signInName: 'ines', password: 'brass tally peg', roles: ['storeman'] },
  { name: 'Tomas Vell', signInName: 'tomas', password: 'panel on wheels', roles: ['crew'] },
  { name: 'Agnes Thorne', signInName: 'agnes', password: 'look before lifting', roles: ['competentPerson'] },
  {
    name: 'Piet Marlow',
    signInName: 'piet',
    password: 'nobody under a load',
    roles: ['manager', 'storeman'],
  },
];

/** Lists the demo accounts on the sign-in page of the demo, and nobody on a real one. */
@Injectable()
export class DemoAccounts {
  constructor(@Inject(SETTINGS) private readonly settings: Settings) {}

  list(): readonly DemoAccount[] {
    return this.settings.demo ? DEMO_ACCOUNTS : [];
  }
}
