'use server';

import { randomUUID } from 'node:crypto';
import { revalidatePath } from 'next/cache';
import { database } from '@/app/_server/database';
import { readStatistics } from '@/app/_server/gradebook/read-statistics';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { problem } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { addingCalibrations } from '@/db/queries/calibrations';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';

/** Accepts the refitted difficulties of an assignment, which are worked out again here: the browser is not asked for them. */
export const acceptDifficulties = action('acceptDifficulties', async (permit, form): Promise<ActResult> => {
  const assignmentId = form instanceof FormData ? String(form.get('assignmentId')) : '';
  const now = new Date();
  const read = await readStatistics(assignmentId, now);
  if (!read || read.refitted.why !== undefined) return { error: await problem('nothing-refitted') };
  if (!read.closed) return { error: await problem('not-between-windows') };
  const { organizationId } = read.assignment;
  const acceptedBy = permit.session.actor.personId;
  const rows = read.refitted.proposals.flatMap((proposal, index) => {
    const place = read.items[index]?.place;
    if (proposal.why !== undefined || place === undefined) return [];
    const { refitted: difficulty, standardError, people: answers } = proposal;
    const item = `${read.assignment.setVersionId} ${place}`;
    return [
      { id: randomUUID(), organizationId, item, difficulty, standardError, answers, acceptedBy, acceptedAt: now },
    ];
  });
  if (rows.length === 0) return { error: await problem('nothing-refitted') };
  const details = { assignment: assignmentId, count: rows.length };
  await together(database(), [
    addingCalibrations(database(), rows),
    addingLogEntry(database(), entryBy(permit, 'difficulty-accepted', { details })),
  ]);
  revalidatePath(`/assignments/${assignmentId}/statistics`);
  return { done: true };
});
