import type { Db } from '@/db/client';
import { appeals, assignedPeople, regrades } from '@/db/schema';
import { addAssignment, addSet, addTurn } from '../../support/teaching-rows';

interface Whose {
  id: string;
  learnerId: string;
  organizationId: string;
}

const at = new Date(Date.UTC(2026, 0, 1));

export function addSetOf(db: Db, id: string, organizationId: string) {
  return addSet(db, { id, organizationId, createdBy: 'somebody' });
}

export async function addAssignmentOf(db: Db, id: string, organizationId: string): Promise<void> {
  const { versionId } = await addSetOf(db, `set of ${id}`, organizationId);
  await addAssignment(db, { id, organizationId, setVersionId: versionId, createdBy: 'somebody' });
}

/** An assignment that is given to the learner by name. */
export async function addGiven(db: Db, { id, learnerId, organizationId }: Whose): Promise<void> {
  await addAssignmentOf(db, id, organizationId);
  await db.insert(assignedPeople).values({ assignmentId: id, userId: learnerId, named: true });
}

export async function addTurnOf(db: Db, { id, learnerId, organizationId }: Whose): Promise<void> {
  const assignmentId = `assignment of ${id}`;
  await addAssignmentOf(db, assignmentId, organizationId);
  await addTurn(db, { id, assignmentId, learnerId, organizationId });
}

export async function addAppeal(db: Db, { id, learnerId, organizationId }: Whose): Promise<void> {
  const note = 'Look again';
  await db.insert(appeals).values({ id, organizationId, learnerId, note, state: 'open', madeAt: at, dueAt: at });
}

export async function addRegrade(db: Db, id: string, organizationId: string): Promise<void> {
  const assignmentId = `assignment of ${id}`;
  await addAssignmentOf(db, assignmentId, organizationId);
  const change = { kind: 'withdraw', place: 1 } as const;
  await db.insert(regrades).values({ id, assignmentId, change, reason: 'Unclear', madeBy: 'somebody', madeAt: at });
}
