import type { Check } from './checks/check';
import type { RestoringStep } from './checks/restoring';
import type { Cause } from './faults/cause';
import type { Fuel } from './fluids/fuel';
import type { Gauge } from './gauges/gauge';
import type { Rubric } from './grading/rubric';
import type { QuestionKindId } from './questions/question';
import type { QuestionContent } from './questions/question-content';
import type { SchemeCharacteristics } from './readiness/characteristics-of-scheme';
import type { RoleProfile } from './readiness/profile';
import type { Scheme } from './readiness/scheme';
import type { Rig } from './rig/rig';
import type { Blueprint } from './sets/blueprint';
import type { ReadySet } from './sets/ready-set';
import type { CodeNames } from './symptoms/code-names';
import type { Topic } from './topics/topic';

/** All validated content, by id, in the order of the ids. */
export interface Catalogue {
  rigs: ReadonlyMap<string, Rig>;
  causes: ReadonlyMap<string, Cause>;
  checks: ReadonlyMap<string, Check>;
  gauges: ReadonlyMap<string, Gauge>;
  fuels: ReadonlyMap<string, Fuel>;
  /** They say what is learnt, and move no reading. */
  topics: ReadonlyMap<string, Topic>;
  /** Words and ranges of the generated questions, by kind. */
  questions: ReadonlyMap<QuestionKindId, QuestionContent>;
  codeNames: CodeNames;
  /** What may have to be put right before a vehicle is handed back, in the order of the file. */
  restoring: ReadonlyMap<string, RestoringStep>;
  rubrics: ReadonlyMap<string, Rubric>;
  /** What instructors start from, and hold their sets against. */
  readySets: ReadonlyMap<string, ReadySet>;
  blueprints: ReadonlyMap<string, Blueprint>;
  /** What somebody must have shown to be trusted with a kind of work. They move no reading. */
  profiles: ReadonlyMap<string, RoleProfile>;
  /** Certificates and what they ask for; an organisation may have changed them. */
  schemes: ReadonlyMap<string, Scheme>;
  /** How schemes of the content decide, by the id of the scheme; written by `npm run characteristics`. */
  characteristics: ReadonlyMap<string, SchemeCharacteristics>;
  /** SHA-256 over every content file that can move a reading. */
  contentHash: string;
  /** The same, with every content file that can move a question. */
  questionHash: string;
}
