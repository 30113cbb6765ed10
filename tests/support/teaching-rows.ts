import type { Db } from '@/db/client';
import {
  appeals,
  assignedPeople,
  assignments,
  calibrations,
  comments,
  nudges,
  overrides,
  regrades,
  secondMarks,
  sets,
  setVersions,
  turnResults,
  turns,
  turnTasks,
} from '@/db/schema';
import type { AssignmentRules } from '@/lib/assignments/rules';
import type { SetBody } from '@/lib/sets/set-body';

const opens = new Date(Date.UTC(2026, 0, 1, 8));
const closes = new Date(Date.UTC(2026, 0, 8, 8));

export function aSetBody(changes: Partial<SetBody> = {}): SetBody {
  return {
    title: 'Supply side',
    note: '',
    items: [
      { id: 'a', kind: 'cases', count: 1, wishes: { rigs: ['tern-13'], topics: ['priming-and-lift-pump'] } },
      { id: 'b', kind: 'questions', count: 1, questionKind: 'judge', topic: 'filtration' },
    ],
    ...changes,
  };
}

export function someRules(changes: Partial<AssignmentRules> = {}): AssignmentRules {
  return {
    opens: '2026-01-01T08:00',
    closes: '2026-01-08T08:00',
    timeZone: 'UTC',
    turns: 1,
    seeds: 'same',
    mode: 'assessed',
    minutes: null,
    late: 'refused',
    weights: null,
    anonymous: false,
    secondMarker: false,
    ...changes,
  };
}

export async function addSet(
  db: Db,
  set: { id: string; organizationId: string; createdBy: string; body?: SetBody; shared?: boolean },
): Promise<{ setId: string; versionId: string }> {
  const { id, organizationId, createdBy, body = aSetBody(), shared = true } = set;
  const versionId = `${id}-1`;
  await db.insert(sets).values({ id, organizationId, createdBy, createdAt: opens, sharedAt: shared ? opens : null });
  await db
    .insert(setVersions)
    .values({ id: versionId, setId: id, number: 1, body, writtenBy: createdBy, changedAt: opens });
  return { setId: id, versionId };
}

export async function addAssignment(
  db: Db,
  assignment: Partial<typeof assignments.$inferInsert> & {
    id: string;
    organizationId: string;
    setVersionId: string;
    createdBy: string;
  },
): Promise<void> {
  const usual = { title: 'Supply side', rules: someRules(), opensAt: opens, closesAt: closes, createdAt: opens };
  await db.insert(assignments).values({ ...usual, ...assignment });
}

export async function addTurn(
  db: Db,
  turn: Partial<typeof turns.$inferInsert> & {
    id: string;
    assignmentId: string;
    learnerId: string;
    organizationId: string;
  },
): Promise<void> {
  await db.insert(turns).values({ number: 1, startedAt: opens, endsAt: closes, ...turn });
}

/** Of the college and of the shop alike: all that teaching keeps of somebody who learns and teaches there. */
export async function addHeldTeaching(
  db: Db,
  {
    userId,
    organizationId,
    stays,
    attemptId,
    sittingId,
  }: Record<'userId' | 'organizationId' | 'stays' | 'attemptId' | 'sittingId', string>,
): Promise<void> {
  const { versionId } = await addSet(db, { id: `set-${stays}`, organizationId, createdBy: userId });
  const assignmentId = `assignment-${stays}`;
  const turnId = `turn-of-${userId}-at-${organizationId}`;
  await addAssignment(db, { id: assignmentId, organizationId, setVersionId: versionId, createdBy: userId });
  await db.insert(assignedPeople).values({ assignmentId, userId, named: true, extraTime: 0.25 });
  await db
    .insert(nudges)
    .values({ id: `nudge-${stays}`, assignmentId, userId, text: 'Read it again', sentBy: userId, sentAt: opens });
  await addTurn(db, { id: turnId, assignmentId, learnerId: userId, organizationId, sittingId });
  await db.insert(turnTasks).values([
    { turnId, place: 1, attemptId },
    { turnId, place: 2, sittingPlace: 1 },
  ]);
  await db.insert(turnResults).values({ turnId, total: 50, waiting: 0, tasks: [] });
  const written = { writtenBy: userId, writtenAt: opens };
  const given = { reason: 'Said it well', givenBy: userId, givenAt: opens };
  await db.insert(comments).values({ id: `comment-${stays}`, attemptId, seq: 1, text: 'Well seen', ...written });
  await db.insert(overrides).values({ id: `override-${stays}`, attemptId, part: 'route', points: 20, ...given });
  await db
    .insert(secondMarks)
    .values({ sittingId, place: 1, score: 1, comment: '', markedBy: userId, markedAt: opens });
  await db.insert(appeals).values({
    id: `appeal-${stays}`,
    organizationId,
    learnerId: userId,
    attemptId,
    note: 'Look again',
    state: 'declined',
    madeAt: opens,
    dueAt: closes,
    answer: 'Looked',
    decidedBy: userId,
    decidedAt: opens,
  });
  await db.insert(regrades).values({
    id: `regrade-${stays}`,
    assignmentId,
    change: { kind: 'withdraw', place: 1 },
    reason: 'It had two answers',
    madeBy: userId,
    madeAt: opens,
    undoneBy: userId,
    undoneAt: opens,
  });
  await db.insert(calibrations).values({
    id: `calibration-${stays}`,
    organizationId,
    item: 'judge',
    difficulty: 0.4,
    standardError: 0.1,
    answers: 300,
    acceptedBy: userId,
    acceptedAt: opens,
  });
}
