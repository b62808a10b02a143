/**
 * Signs that a spreadsheet may take for the start of a formula (OWASP ASVS 5.0, 1.2.10). A cell may carry our own
 * guard already, so a row of apostrophes before such a sign counts as well: that keeps guarding reversible.
 */
const STARTS_LIKE_FORMULA = /^'*[=+\-@\t\r\0]/;

/** The text as it may stand in a sheet: with an apostrophe in front where a spreadsheet would otherwise calculate. */
export function guardCell(text: string): string {
  return STARTS_LIKE_FORMULA.test(text) ? `'${text}` : text;
}

/** Takes away exactly the apostrophe that `guardCell` put there. Gives undefined of text that carries none. */
export function unguardCell(text: string): string | undefined {
  return text.startsWith("'") && STARTS_LIKE_FORMULA.test(text.slice(1)) ? text.slice(1) : undefined;
}
