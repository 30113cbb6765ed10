import { database } from '@/app/_server/database';
import { listActs } from '@/db/queries/acts';
import { type Attempt, findAttempt } from '@/db/queries/attempts';
import { type CallRow, findCall } from '@/db/queries/calls';
import type { OpenAct } from '@/db/schema/acts';
import { type Case, GENERATOR_VERSION } from '@/lib/cases/case';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { catalogue } from './catalogue';
import type { Desk } from './permit';
import { type Within, withinWhat } from './turns/untold';

export type StoredOpenAct = OpenAct & { seq: number };

/** An attempt and all that happened in it. */
export interface History extends Within {
  attempt: Attempt;
  /** In order; the call is not among them. */
  acts: readonly StoredOpenAct[];
  /** Keys of the acts, each with its number. */
  keys: ReadonlyMap<string, number>;
  call: CallRow | undefined;
}

/** A learner's own attempt; undefined when it is missing or someone else's. */
export async function readHistory({ learnerId }: Desk, attemptId: string): Promise<History | undefined> {
  const attempt = await findAttempt(database(), learnerId, attemptId);
  if (!attempt) return undefined;
  const rows = await listActs(database(), learnerId, attemptId);
  return {
    attempt,
    acts: rows.map(({ seq, body }) => ({ ...body, seq })),
    keys: new Map(rows.map(({ key, seq }) => [key, seq])),
    call: await findCall(database(), learnerId, attemptId),
    ...(await withinWhat(database(), { attemptId })),
  };
}

/** Whether content or generator have moved since: the case could no longer be computed as it was. */
export function isSuperseded({ generatorVersion, contentHash }: Pick<Attempt, 'generatorVersion' | 'contentHash'>) {
  return generatorVersion !== GENERATOR_VERSION || contentHash !== catalogue().contentHash;
}

/** The case of an attempt, with its truth. For the server alone. @throws when the attempt is superseded. */
export function caseOf({ caseCode }: Pick<Attempt, 'caseCode'>): Case {
  const parsed = parseCaseCode(caseCode, catalogue());
  if ('error' in parsed) throw new RangeError(`Stored case code ${caseCode}: ${parsed.error}`);
  return caseFromSeed(parsed.spec, catalogue());
}
