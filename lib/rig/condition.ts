/** How the engine is run during a check, in the order a shop would go through them. */
export const conditionIds = ['key-on', 'cranking', 'idle', 'high-idle', 'full-load', 'key-off'] as const;

export type ConditionId = (typeof conditionIds)[number];
