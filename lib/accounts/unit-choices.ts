/** Families of units a reader may want. Flow is in millilitres a minute in all of them. */
export const unitChoices = ['kpa-c', 'psi-f', 'bar-c'] as const;
export type UnitChoice = (typeof unitChoices)[number];
