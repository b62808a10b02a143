/** What is told of a check whose moment cannot be trusted, on the phone and by the server alike. */
export const CLOCK_IN_DOUBT =
  'This check does not count: the clock of the device cannot be right, or the check came in more than 36 hours ' +
  'after it was made. Faults found stand. Set the clock, and check the gear again before it is used.';
