/** A check as its form sends it, in the shape that `NewCheckDto` reads. */
export interface CheckForm {
  readonly jobId?: number;
  readonly answers: readonly Readonly<Record<string, unknown>>[];
}

/**
 * Reads the fields of the form, after `readForm`. Figures come as a list of their own, each with the place of its
 * point; one left blank was not measured.
 */
export function readCheckForm(form: Readonly<Record<string, unknown>>): CheckForm {
  const figures = records(form['figures']);
  const jobId = jobNumber(form['jobId']);
  return {
    ...(jobId !== undefined && { jobId }),
    answers: records(form['answers']).map((answer, index) => {
      const own = figures.filter(({ at, value }) => at === String(index) && value !== undefined);
      if (own.length === 0) return answer;
      const entries = own.map(({ name, value, unit = '' }) => [String(name), { value, unit }]);
      return { ...answer, figures: Object.fromEntries(entries) as unknown };
    }),
  };
}

/** The number of a job out of a field or an address; undefined of what is none. */
export function jobNumber(value: unknown): number | undefined {
  return typeof value === 'string' && /^[1-9]\d{0,8}$/.test(value) ? Number(value) : undefined;
}

function records(value: unknown): Record<string, unknown>[] {
  return Array.isArray(value)
    ? Array.from(value, (entry: unknown) => (isRecord(entry) ? { ...entry } : {}))
    : [];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
