import type { RoleProfile } from './profile';
import type { Scheme } from './scheme';
import type { SittingRules } from './sitting-rules';

/** What an adaptive sitting under a scheme has to come to. How many cases it takes to speak of safety is the profile's to say. */
export function sittingRulesUnder(
  { blueprint, cut, confidence, refuse, sitting }: Scheme,
  { safety }: Pick<RoleProfile, 'safety'>,
): SittingRules {
  return {
    topics: blueprint.map(({ topic, share, atLeast }) => ({ topic, cut: cut.ability, confidence, share, atLeast })),
    refuse,
    maximum: sitting.maximum,
    cases: safety.atLeast,
    seconds: sitting.minutes * 60,
  };
}
