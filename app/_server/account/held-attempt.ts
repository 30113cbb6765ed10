import type { Db } from '@/db/client';
import { type ActRow, listActs } from '@/db/queries/acts';
import { type Attempt, findAttempt } from '@/db/queries/attempts';
import { type CallRow, findCall } from '@/db/queries/calls';
import type { OpenAct } from '@/db/schema/acts';
import type { Features } from '@/lib/diagnosis/difficulty';
import type { CallAct } from '@/lib/grading/acts';
import type { Grade } from '@/lib/grading/grade';
import { isUntoldWithin, withinWhat } from '../turns/untold';

export type HeldAct = OpenAct & { seq: number; at: Date };

/** A person's attempt as they may take it away. */
export interface HeldAttempt {
  attemptId: string;
  organizationId: string | null;
  /** Null while it is part of a turn of which nothing may be told yet. */
  caseCode: string | null;
  generatorVersion: number;
  contentHash: string;
  coached: boolean;
  demo: boolean;
  startedAt: Date;
  acts: readonly HeldAct[];
  /** Null while the call is not made, or nothing may be told of it: until then nothing may tell what is wrong. */
  closed: ClosedAttempt | null;
}

interface ClosedAttempt {
  call: CallAct & { seq: number; at: Date };
  grade: Grade;
  difficulty: number | null;
  features: Features | null;
}

/** A person's attempt with all that they did in it; undefined when it is missing or someone else's. */
export async function heldAttempt(
  db: Db,
  personId: string,
  attemptId: string,
  now: Date,
): Promise<HeldAttempt | undefined> {
  const attempt = await findAttempt(db, personId, attemptId);
  if (!attempt) return undefined;
  const [acts, call] = [await listActs(db, personId, attemptId), await findCall(db, personId, attemptId)];
  if (!isUntoldWithin(await withinWhat(db, { attemptId }), now)) return toHeld(attempt, acts, call);
  return { ...toHeld(attempt, acts, undefined), caseCode: null };
}

function toHeld(attempt: Attempt, acts: readonly ActRow[], call: CallRow | undefined): HeldAttempt {
  const { id, organizationId, caseCode, generatorVersion, contentHash, coached, demo, createdAt } = attempt;
  return {
    attemptId: id,
    organizationId,
    caseCode,
    generatorVersion,
    contentHash,
    coached,
    demo,
    startedAt: createdAt,
    acts: acts.map(({ seq, createdAt: at, body }) => ({ seq, at, ...body })),
    closed: call ? closedWith(attempt, call) : null,
  };
}

function closedWith({ difficulty, features }: Attempt, { seq, calledAt: at, body, grade }: CallRow): ClosedAttempt {
  return { call: { seq, at, ...body }, grade, difficulty, features };
}
