import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { addingManualMark } from '@/db/queries/manual-marks';
import { questionMarks, turnTasks } from '@/db/schema';
import { together } from '@/db/together';
import type { AssignmentRules } from '@/lib/assignments/rules';
import { aNewCall, anAttempt } from './attempt-rows';
import { addPersonOf, makeShopAndCollege, noon } from './shop-rows';
import { aBody, aMark, begin } from './sitting-rows';
import { addAssignment, addSet, addTurn, someRules } from './teaching-rows';

/** An assignment of the shop's: Lea handed in a case and free text, Ira and Ida may mark it. */
export async function addHandedIn(db: Db, rules: Partial<AssignmentRules> = {}): Promise<void> {
  await makeShopAndCollege(db);
  await addPersonOf(db, 'lea', { harbour: 'learner' });
  for (const id of ['ira', 'ida']) await addPersonOf(db, id, { harbour: 'instructor,learner' });
  const { versionId } = await addSet(db, { id: 'set', organizationId: 'harbour', createdBy: 'ira' });
  await addAssignment(db, {
    id: 'week-one',
    organizationId: 'harbour',
    setVersionId: versionId,
    createdBy: 'ira',
    rules: someRules({ mode: 'practice', ...rules }),
  });
  await recordAttempt(db, anAttempt({ id: 'case', learnerId: 'lea', organizationId: 'harbour', key: 'case' }));
  await recordCall(db, 'lea', aNewCall({ attemptId: 'case', key: 'call' }));
  await begin(db, { id: 'questions', learnerId: 'lea', organizationId: 'harbour', key: 'questions' });
  await db.insert(questionMarks).values(
    aMark({
      sittingId: 'questions',
      answer: { form: 'words', text: 'Air.' },
      asked: { ...aBody, steps: 3 },
      mark: { credit: null, score: null, notes: [] },
    }),
  );
  await addTurn(db, {
    id: 'turn',
    assignmentId: 'week-one',
    learnerId: 'lea',
    organizationId: 'harbour',
    sittingId: 'questions',
    handedInAt: noon,
  });
  await db.insert(turnTasks).values([
    { turnId: 'turn', place: 1, attemptId: 'case' },
    { turnId: 'turn', place: 2, sittingPlace: 1 },
  ]);
}

/** The free text's mark by somebody, some minutes after noon. */
export async function markText(db: Db, markedBy: string, score: number, seq = 1): Promise<void> {
  const markedAt = new Date(noon.getTime() + seq * 60_000);
  await together(db, [
    addingManualMark(db, { sittingId: 'questions', place: 1, seq, score, comment: '', markedBy, markedAt }),
  ]);
}
