import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Particles } from '../diagnosis/particles';
import type { Act, StoredAct } from './acts';
import type { Rubric } from './rubric';

/** What an attempt is marked with. */
export interface Marking {
  theCase: Case;
  catalogue: Catalogue;
  particles: Particles;
  rubric: Rubric;
}

/** What work is marked with where belief does not come into it. */
export type Terms = Pick<Marking, 'catalogue' | 'rubric'> & { theCase: Pick<Case, 'rig'> };

/** An act of one kind with its number. */
export type Numbered<T extends Act> = T & { seq: number };

/** Acts of one kind, in their order. */
export function actsOf<K extends Act['kind']>(acts: readonly StoredAct[], kind: K) {
  return acts.filter((act): act is Extract<Act, { kind: K }> & { seq: number } => act.kind === kind);
}
