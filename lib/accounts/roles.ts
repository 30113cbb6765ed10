/** What a person may be in an organisation. One may be several. */
export const roles = ['learner', 'instructor', 'shop-lead', 'administrator'] as const;
export type Role = (typeof roles)[number];

/** Roles out of their stored form; unknown words count for nothing. */
export function parseRoles(stored: string): Role[] {
  const words = stored.split(',');
  return roles.filter((role) => words.includes(role));
}

/** Roles in their stored form: each once, in the order of `roles`. */
export function formatRoles(held: readonly Role[]): string {
  return roles.filter((role) => held.includes(role)).join(',');
}
