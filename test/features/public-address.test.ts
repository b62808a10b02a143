import { describe, expect, it } from 'vitest';
import { leadsToItself } from '../../src/reminders/public-address.js';

describe('an address that leads to the machine it is opened on', () => {
  // RFC 1122 section 3.2.1.3, RFC 4291 section 2.5.3, RFC 6761 section 6.3.
  it.each(['http://127.0.0.1:3000', 'http://127.8.9.1', 'http://[::1]:3000/calendar', 'https://localhost'])(
    '%s is one',
    (address) => expect(leadsToItself(address)).toBe(true),
  );

  it.each([
    'http://192.0.2.7:3000',
    'https://gear.example',
    'https://localhost.gear.example',
    'http://[2001:db8::1]',
  ])('%s is none', (address) => expect(leadsToItself(address)).toBe(false));
});
