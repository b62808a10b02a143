/** `$1, $2, $3` for so many values, both engines' way; `after` is how many come before in the statement. */
export function placeholders(count: number, after = 0): string {
  return Array.from({ length: count }, (_, place) => `$${place + 1 + after}`).join(', ');
}
