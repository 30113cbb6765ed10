/** How the engine is run during a check, in the order a shop would go through them. */
export const conditionIds = [
  'key-on',
  'cranking',
  'idle',
  'high-idle',
  'full-load',
  'snap-acceleration',
  'key-off',
] as const;

export type ConditionId = (typeof conditionIds)[number];

/** Conditions in which a rig comes to rest; the others only have traces. */
export type SteadyConditionId = Exclude<ConditionId, 'snap-acceleration'>;

export const steadyConditionIds = [
  'key-on',
  'cranking',
  'idle',
  'high-idle',
  'full-load',
  'key-off',
] as const satisfies readonly SteadyConditionId[];

export function isSteady(condition: ConditionId): condition is SteadyConditionId {
  return condition !== 'snap-acceleration';
}
