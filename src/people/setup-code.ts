import { Injectable } from '@nestjs/common';
import { randomInt, timingSafeEqual } from 'node:crypto';

const LETTERS = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789'; // without the letters and digits that are misread

/** The one-time code that whoever started the server reads from its output and types on the first-run page. */
@Injectable()
export class SetupCode {
  readonly code = [4, 4, 4].map((length) => Array.from({ length }, pick).join('')).join('-');

  matches(typed: string): boolean {
    const [a, b] = [Buffer.from(typed.trim().toUpperCase()), Buffer.from(this.code)];
    return a.length === b.length && timingSafeEqual(a, b);
  }
}

function pick(): string {
  return LETTERS.charAt(randomInt(LETTERS.length));
}
