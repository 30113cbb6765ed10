import type { Db } from '@/db/client';
import { applications, panelJudges, panels } from '@/db/schema';
import { aScheme } from '../../support/competency-rows';
import { people } from '../../support/people';

const at = new Date(Date.UTC(2026, 0, 1));

/** A panel with everybody of the staff among its judges, so that whoever may come in finds nothing shut. */
export async function addPanelOf(db: Db, id: string, organizationId: string): Promise<void> {
  await db.insert(panels).values({
    ...{ id, organizationId, schemeId: 'low-pressure-diagnosis', title: 'Spring', tasks: [], state: 'first-round' },
    ...{ createdBy: 'somebody', createdAt: at },
  });
  await db.insert(panelJudges).values(Object.values(people).map((person) => ({ panelId: id, judgeId: person.id })));
}

export async function addApplicationOf(
  db: Db,
  { id, learnerId, organizationId }: Record<'id' | 'learnerId' | 'organizationId', string>,
): Promise<void> {
  await db.insert(applications).values({
    ...{ id, organizationId, learnerId, schemeId: 'low-pressure-diagnosis', scheme: aScheme(), state: 'open' },
    appliedAt: at,
  });
}
