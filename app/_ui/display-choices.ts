export { type UnitChoice, unitChoices } from '@/lib/accounts/unit-choices';

export const themes = ['system', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];
