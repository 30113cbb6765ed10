import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { findLimit, limitBounds } from '../checks/limit';
import { type Belief, beliefAtStart } from './belief';
import { difficultyOf, type Features } from './difficulty';
import { type ExpertRoute, expertRoute, readingsOf, SETTLED } from './expert-route';
import { type Particles, particlesOf } from './particles';
import { byCause, byRepair, repairDecision } from './shares';

/** Whether a case can be settled by the checks there are, how, and how hard that is. */
export interface Certificate {
  settled: boolean;
  /** Belief in the right repair at the expert's end. */
  right: number;
  route: ExpertRoute;
  features: Features;
  /** Logits. */
  difficulty: number;
}

/** A case is settled when the expert's route ends with so much belief in the right repair: SETTLED. */
export function certify(
  theCase: Case,
  catalogue: Catalogue,
  particles: Particles = particlesOf(theCase, catalogue),
): Certificate {
  const route = expertRoute(theCase, catalogue, particles);
  const right = byRepair(particles, route.belief).get(rightRepair(theCase, catalogue)) ?? 0;
  const features = featuresOf(theCase, catalogue, particles, route);
  return { settled: right >= SETTLED, right, route, features, difficulty: difficultyOf(features) };
}

/** The repair decision that puts the vehicle right. */
export function rightRepair({ truth: { cause, also } }: Pick<Case, 'truth'>, { causes }: Catalogue): string {
  return repairDecision([cause, ...(also ? [also.cause] : [])].flatMap((id) => causes.get(id) ?? []));
}

const FIRST_READINGS = 3;
const LOOKS_ALIKE = 0.05;

function featuresOf(theCase: Case, catalogue: Catalogue, particles: Particles, route: ExpertRoute): Features {
  const early: Belief = route.beliefs[Math.min(FIRST_READINGS, route.beliefs.length) - 1] ?? beliefAtStart(particles);
  const alike = [...byCause(particles, early).values()].filter((share) => share >= LOOKS_ALIKE);
  return {
    checks: route.steps.length,
    conditions: new Set(route.steps.map(({ condition }) => condition)).size,
    closeness: closenessOf(theCase, catalogue, route),
    lookAlikes: alike.length,
    masked: theCase.truth.also !== undefined,
  };
}

/** What no reading comes near. */
const FAR_AWAY = 50;

function closenessOf({ rig }: Case, catalogue: Catalogue, { steps, shown }: ExpertRoute): number {
  const distances = steps.flatMap((step, index) =>
    readingsOf(catalogue, step, shown[index] ?? []).flatMap(({ check, condition, quantity, seen }) => {
      const line = findLimit(rig, check, condition, quantity.id);
      if (!line || quantity.grades || seen.beyond || seen.uncertainty === 0) return [];
      const { min, max } = limitBounds(line);
      return [min, max].flatMap((bound) =>
        bound === undefined ? [] : Math.abs(seen.value - bound) / seen.uncertainty,
      );
    }),
  );
  return Math.round(Math.min(FAR_AWAY, ...distances) * 10) / 10;
}
