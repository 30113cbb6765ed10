import type { Db } from '@/db/client';
import { panelJudges, panels } from '@/db/schema';
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
