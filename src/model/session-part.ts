/** Where a coat stands among those of its session. */
export const sessionParts = ['first', 'middle', 'last'] as const;
export type SessionPart = (typeof sessionParts)[number];
