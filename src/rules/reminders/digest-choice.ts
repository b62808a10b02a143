/** How much of what falls due a person is told: each working day, once a week, only what is overdue, or nothing. */
export const DIGEST_CHOICES = ['daily', 'weekly', 'overdueOnly', 'none'] as const;
export type DigestChoice = (typeof DIGEST_CHOICES)[number];
