import { isEmail } from 'class-validator';
import { describe, expect, it } from 'vitest';
import { bareAddress } from '../../src/mail-address.js';

/** The strictest an independent check goes: validator.js, by way of class-validator. */
const isAddressElsewhere = (text: string) =>
  isEmail(text, { allow_display_name: false, allow_utf8_local_part: false, allow_ip_domain: false });

describe('a mail address', () => {
  // Unquoted addresses of RFC 3696, section 3, from memory, under a domain kept for examples by RFC 2606.
  it.each([
    'user+mailbox@yard.example',
    'customer/department=shipping@yard.example',
    '$A12345@yard.example',
    '!def!xyz%abc@yard.example',
    '_somename@yard.example',
    'x@a.b.c.d.example',
    'x@1st-yard.example',
    `${'l'.repeat(64)}@yard.example`,
  ])('%s is kept as it is', (address) => {
    expect(bareAddress(address)).toBe(address);
    expect(isAddressElsewhere(address)).toBe(true);
  });

  it('keeps the case before the @ only, as RFC 5321, 2.4 asks', () => {
    expect(bareAddress('Ines.Okonjo@Yard.EXAMPLE')).toBe('Ines.Okonjo@yard.example');
  });

  // bücher is the usual example of Punycode (RFC 3492), from memory.
  it('keeps an international domain in its ASCII form', () => {
    expect(bareAddress('x@Bücher.example')).toBe('x@xn--bcher-kva.example');
    expect(bareAddress('x@bu\u0308cher.example')).toBe('x@xn--bcher-kva.example');
  });

  it.each([
    ['a name beside it', 'Ines <ines@yard.example>'],
    ['brackets', '<ines@yard.example>'],
    ['two of them', 'ines@yard.example,piet@yard.example'],
    ['two of them with a semicolon', 'ines@yard.example;piet@yard.example'],
    ['two signs', 'ines@yard@yard.example'],
    ['a line break', 'ines@yard.example\nBcc: all@yard.example'],
    ['a line break of headers', 'ines\r\nBcc:all@yard.example'],
    ['a line break at its end', 'ines@yard.example\r\n'],
    ['a NUL', 'ines\u0000@yard.example'],
    ['a space', 'ines okonjo@yard.example'],
    ['a space at its end', 'ines@yard.example '],
    ['a comment', 'ines(store)@yard.example'],
    ['a bare machine', 'ines@localhost'],
    ['a literal of a machine', 'ines@[192.0.2.1]'],
    ['the numbers of a machine', 'ines@192.0.2.1'],
    ['nothing before the sign', '@yard.example'],
    ['nothing after it', 'ines@'],
    ['no sign', 'ines.yard.example'],
    ['a dot at the start', '.ines@yard.example'],
    ['two dots together', 'ines..okonjo@yard.example'],
    ['a dot before the sign', 'ines.@yard.example'],
    ['two dots in the domain', 'ines@yard..example'],
    ['a domain that starts with a dash', 'ines@-yard.example'],
    ['a domain that ends with a dash', 'ines@yard-.example'],
    ['an underscore in the domain', 'ines@my_yard.example'],
    ['65 letters before the sign', `${'l'.repeat(65)}@yard.example`],
    ['a label of 64 letters', `ines@${'l'.repeat(64)}.example`],
    ['more than ASCII before the sign', 'inés@yard.example'],
    ['nothing', ''],
  ])('with %s is refused', (_, text) => {
    expect(bareAddress(text)).toBeUndefined();
    expect(isAddressElsewhere(text)).toBe(false);
  });

  it.each([
    ['a quoted part, which RFC 5321 allows', '"ines okonjo"@yard.example'],
    ['a mark that turns the text round', 'ines@yard.example\u202e'],
    ['a domain in letters as wide as they are high', 'ines@\uff59\uff41\uff52\uff44.example:25'],
    ['a domain in percent signs', 'ines@yard%2eexample'],
  ])('with %s is refused here, whatever others do', (_, text) => {
    expect(bareAddress(text)).toBeUndefined();
  });

  // RFC 5321, 4.5.3.1.3: a path of 256 less its brackets. RFC 3696, erratum 1690, says 254 for the same reason.
  it('has at most 254 characters, counted in the form that is sent', () => {
    const label = 'd'.repeat(60);
    const start = `${'l'.repeat(64)}@${label}.${label}.`;
    const address = (last: number) => `${start}${'e'.repeat(last)}.example`;
    expect(bareAddress(address(254 - start.length - 8))).toHaveLength(254);
    expect(bareAddress(address(255 - start.length - 8))).toBeUndefined();
  });
});
