import { describe, expect, it } from 'vitest';
import { scannedTag } from '../../src/rules/text/scanned-tag.js';

describe('the tag that a scanner or a person means', () => {
  it.each([
    ['http://localhost:3000/t/RS-001', 'RS-001'],
    ['https://gear.firm.example/t/RS-001', 'RS-001'],
    ['https://gear.firm.example/under/here/t/RS-001/', 'RS-001'],
    [' HTTP://GEAR.FIRM.EXAMPLE/T/RS-001\n', 'RS-001'],
    ['https://gear.firm.example/t/RS-001?from=label#top', 'RS-001'],
    ['http://[2001:db8::7]:3000/t/RS-001', 'RS-001'],
  ])('is the last part of the address %o', (text, tag) => {
    expect(scannedTag(text)).toBe(tag);
  });

  // RFC 3986, section 2.1: a sign that has a meaning in addresses is written as % and the two digits of each byte.
  it.each(['RS 001', 'SL/014', 'Ä-7', 'A+B', '50%', 'a?b#c'])('is decoded: %o', (tag) => {
    expect(scannedTag(`http://store.example/t/${encodeURIComponent(tag)}`)).toBe(tag);
  });

  it.each([
    'RS-001',
    'rs 001',
    'A/t/7',
    'http://store.example/register/7',
    'http://store.example/t/',
    'http://store.example/t/RS-001/check',
    'http://store.example/?then=/t/RS-001',
    'ftp://store.example/t/RS-001',
    'see http://store.example/t/RS-001',
  ])('is anything else as it stands: %o', (text) => {
    expect(scannedTag(text)).toBe(text);
  });

  it('is what cannot be decoded as it stands, and trimmed', () => {
    expect(scannedTag('http://store.example/t/50%')).toBe('50%');
    expect(scannedTag('  RS-001 ')).toBe('RS-001');
  });
});
