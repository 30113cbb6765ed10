import type { Case } from '@/lib/cases/case';
import { particlesOf } from '@/lib/diagnosis/particles';
import type { Marking } from '@/lib/grading/marking';
import type { Rubric } from '@/lib/grading/rubric';
import { catalogue } from './bench-rig';

export function standardRubric(changes: Partial<Rubric> = {}): Rubric {
  const rubric = catalogue.rubrics.get('standard');
  if (!rubric) throw new Error('No standard rubric');
  return { ...rubric, ...changes };
}

/** What a case is marked with. Takes some tenths of a second: once a case. */
export function markingOf(theCase: Case, rubric = standardRubric()): Marking {
  return { theCase, catalogue, rubric, particles: particlesOf(theCase, catalogue) };
}
