import { hookUpKey } from '@/lib/diagnosis/next-check';
import type { Grade, StepGrade } from '@/lib/grading/grade';
import type { ConditionId } from '@/lib/rig/condition';
import type { AttemptView } from './attempt-view';
import { catalogue } from './catalogue';

/** A step of a route in words. */
export interface StepView {
  /** Its own within the route. */
  id: string;
  /** The same for the same check in the same condition. */
  key: string;
  check: string;
  condition: ConditionId;
  minutes: number;
}

/** A step of the learner, with what it was worth where the grade says so. */
export interface JudgedStepView extends StepView {
  seq: number;
  /** 0…1. */
  credit: number | undefined;
  /** What would have told more per minute; undefined where nothing would have. */
  better: { check: string; condition: ConditionId } | undefined;
}

export interface RouteViews {
  yours: readonly JudgedStepView[];
  expert: readonly StepView[];
}

/** Both routes by what was stored; older grades say nothing about a step's worth. */
export function routeViews(attempt: Pick<AttemptView, 'readings'>, { course, expertRoute }: Grade): RouteViews {
  const worth = new Map(course?.steps.map((step) => [step.seq, step]));
  return {
    yours: attempt.readings.map(({ seq, check, condition, minutes }) => {
      const step = worth.get(seq);
      const key = hookUpKey(check.id, condition);
      return {
        id: String(seq),
        key,
        seq,
        check: check.name,
        condition,
        minutes,
        credit: step?.credit,
        better: betterThan(step),
      };
    }),
    expert: (course?.expert ?? expertRoute).map(({ check, condition, minutes }) => ({
      id: hookUpKey(check, condition),
      key: hookUpKey(check, condition),
      check: checkName(check),
      condition,
      minutes,
    })),
  };
}

function betterThan(step: StepGrade | undefined): JudgedStepView['better'] {
  if (!step?.best || step.best.perMinute <= step.perMinute || step.credit >= 1) return undefined;
  const { check, condition } = step.best;
  if (hookUpKey(check, condition) === hookUpKey(step.check, step.condition)) return undefined;
  return { check: checkName(check), condition };
}

/** What a check is called; its id where content has dropped it. */
export function checkName(id: string): string {
  return catalogue().checks.get(id)?.text.en.name ?? id;
}
