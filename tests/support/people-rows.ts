import type { NewOrganization } from '@/db/queries/organizations';
import type { members, users } from '@/db/schema';

const noon = new Date(Date.UTC(2026, 0, 1, 12));

/** An organisation of nobody's. */
export function anOrganization(changes: Partial<NewOrganization> = {}): NewOrganization {
  return { id: 'harbour', name: 'Harbour Diesel', slug: 'harbour', createdAt: noon, ...changes };
}

export function aUser(changes: Partial<typeof users.$inferInsert> = {}): typeof users.$inferInsert {
  return { id: 'ada', name: 'Ada', email: 'ada@harbour.invalid', createdAt: noon, updatedAt: noon, ...changes };
}

export function aMember(changes: Partial<typeof members.$inferInsert> = {}): typeof members.$inferInsert {
  return {
    id: 'ada-at-harbour',
    organizationId: 'harbour',
    userId: 'ada',
    role: 'learner',
    createdAt: noon,
    ...changes,
  };
}
