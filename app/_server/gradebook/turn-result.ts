import type { Db } from '@/db/client';
import type { TurnResultRow } from '@/db/queries/turn-results';
import {
  findTurnWithRules,
  listChanges,
  listMarkedPlaces,
  listOverrides,
  listTurnCases,
  listTurnTasks,
} from '@/db/queries/turn-work';
import { lateCost } from '@/lib/assignments/phase';
import { turnTotal } from '@/lib/assignments/turn-total';
import type { TaskResult } from '@/lib/gradebook/task-result';
import type { Answer } from '@/lib/questions/answer';
import type { QuestionBody } from '@/lib/questions/question';
import type { Change } from '@/lib/regrading/change';
import { isWithdrawn } from '@/lib/regrading/remark-case';
import { effectiveCase, effectiveQuestion } from '@/lib/reviewing/effective';
import { isCase, type Task, tasksOf } from '@/lib/sets/tasks';
import { catalogue } from '../catalogue';

type Override = Awaited<ReturnType<typeof listOverrides>>[number];
type CaseRow = Awaited<ReturnType<typeof listTurnCases>>[number];
type MarkRow = Awaited<ReturnType<typeof listMarkedPlaces>>['marks'][number];

/**
 * What a turn came to, with every override and change of marks that counts.
 *
 * @param changes  Those of the assignment; other ones show what they would do.
 * @returns undefined when there is no such turn.
 */
export async function turnResult(
  db: Db,
  turnId: string,
  changes?: readonly Change[],
): Promise<TurnResultRow | undefined> {
  const read = await findTurnWithRules(db, turnId);
  if (!read) return undefined;
  const { turn, assignment, body, extraTime } = read;
  const counting = changes ?? (await listChanges(db, assignment.id)).map(({ change }) => change);
  const [places, cases] = [await listTurnTasks(db, turnId), await listTurnCases(db, turnId)];
  const { marks, given } = turn.sittingId ? await listMarkedPlaces(db, turn.sittingId) : { marks: [], given: [] };
  const attemptIds = cases.map(({ attemptId }) => attemptId);
  const overridden = await listOverrides(db, { attemptIds, sittingId: turn.sittingId });
  const manual = new Map(given.map(({ place, score }) => [place, score]));
  const tasks = tasksOf(body).map((task): TaskResult => {
    const at = places.find(({ place }) => place === task.place);
    if (isCase(task)) {
      const row = cases.find(({ place }) => place === task.place);
      return caseResult(task, row, counting, overridden);
    }
    const place = at?.sittingPlace ?? -1;
    const row = marks.find(({ mark }) => mark.place === place);
    return questionResult(task, row, { manual: manual.get(place), changes: counting, overridden });
  });
  const cost = turn.handedInAt ? lateCost(assignment, turn.handedInAt, extraTime ?? 0) : 0;
  return { turnId, tasks, ...turnTotal(tasks, cost) };
}

function caseResult(
  { place }: Task,
  row: CaseRow | undefined,
  changes: readonly Change[],
  overridden: readonly Override[],
): TaskResult {
  const withdrawn = isWithdrawn(changes, place);
  const call = row?.call;
  if (!row || !call) return { ...NOTHING, place, kind: 'case', withdrawn };
  const given = overridden.filter(({ attemptId }) => attemptId === row.attemptId);
  const { grade } = call;
  const cap = catalogue().rubrics.get(grade.rubric?.id ?? '')?.safetyCap ?? grade.total;
  const { cause, also } = call.body;
  return {
    place,
    kind: 'case',
    share: effectiveCase(grade, changes, cap, given).total / 100,
    computed: grade.total / 100,
    seconds: (call.calledAt.getTime() - row.startedAt.getTime()) / 1000,
    chose: also ? [cause, also.cause] : [cause],
    right: grade.callCorrect.cause,
    difficulty: grade.difficulty ?? null,
    withdrawn,
  };
}

interface Marked {
  /** Steps that a person gave for free text. */
  manual: number | undefined;
  changes: readonly Change[];
  overridden: readonly Override[];
}

function questionResult(
  { place }: Task,
  row: MarkRow | undefined,
  { manual, changes, overridden }: Marked,
): TaskResult {
  const withdrawn = isWithdrawn(changes, place);
  if (!row) return { ...NOTHING, place, kind: 'question', withdrawn };
  const { mark, askedAt } = row;
  const { asked, answer } = mark;
  const computed = mark.mark.credit;
  const given = overridden.filter((one) => one.sittingId === mark.sittingId && one.place === mark.place);
  const effective = effectiveQuestion({ asked, answer, credit: computed, manual }, changes, place, given);
  const share = effective.points === null ? null : effective.points / effective.outOf;
  return {
    place,
    kind: 'question',
    share,
    computed,
    seconds: answer ? (mark.markedAt.getTime() - askedAt.getTime()) / 1000 : null,
    chose: answer && chosenIn(answer),
    right: isRight(asked, share),
    difficulty: asked.difficulty,
    withdrawn,
  };
}

const NOTHING = { share: 0, computed: 0, seconds: null, chose: null, right: null, difficulty: null } as const;

/** What an answer named, where it names things. */
function chosenIn(answer: Answer): readonly string[] | null {
  switch (answer.form) {
    case 'choice':
      return [answer.option];
    case 'several':
      return answer.options;
    case 'point':
      return [answer.target];
    case 'stretch':
      return [answer.stretch];
    case 'spot':
      return [answer.shape];
    default:
      return null;
  }
}

function isRight({ steps }: QuestionBody, share: number | null): boolean | null {
  return share === null || steps > 1 ? null : share === 1;
}
