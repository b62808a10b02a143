/** What a person may do. A person may hold several roles. */
export const ROLES = ['storeman', 'crew', 'competentPerson', 'manager'] as const;
export type Role = (typeof ROLES)[number];
