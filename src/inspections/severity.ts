/** How bad: a danger now, a danger by a named day, or something to watch. */
export const SEVERITIES = ['immediateDanger', 'dangerByDate', 'observation'] as const;
export type Severity = (typeof SEVERITIES)[number];
