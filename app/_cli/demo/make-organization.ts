import { database } from '@/app/_server/database';
import { hashSecret } from '@/app/_server/hash-secret';
import { addingPerson, type NewPerson } from '@/app/_server/people/adding-person';
import { inventedDesk } from '@/app/_server/permit';
import { randomId } from '@/app/_server/random-id';
import { addingClass } from '@/db/queries/classes';
import { addingLogEntry, type NewLogEntry } from '@/db/queries/log-entries';
import { addingOrganization } from '@/db/queries/organizations';
import { type Statement, together } from '@/db/together';
import { formatUserName, storedAddress } from '@/lib/accounts/sign-in-name';
import type { Demo, DemoApprentice } from './demo-content';
import type { DemoClass } from './play-assignments';
import type { DemoLearner } from './play-history';
import { minutesAfter, workingDays } from './working-days';

/** When the office opens, before anybody practises. Minutes after midnight. */
const OFFICE_OPENS = 7 * 60 + 30;

/** Makes the organisation, its people and its class, all or nothing, as if some weeks ago. Returns the apprentices, and where they learn. */
export async function makeOrganization(
  demo: Demo,
  now: Date,
): Promise<{ learners: DemoLearner[]; demoClass: DemoClass }> {
  const organizationId = randomId();
  const classId = randomId();
  const at = since(now, Math.max(...demo.apprentices.map(({ weeks }) => weeks)) + 1);
  const learners = demo.apprentices.map((one, index) => ({ ...one, index, id: randomId() }));
  const [password, pin] = [await hashSecret(demo.password), await hashSecret(demo.pin)];
  const staff = staffOf(demo).map((one) => ({ ...one, id: randomId(), hash: password, organizationId, at }));
  const apprentices = learners.map(({ weeks, ...one }) => ({
    ...personOf(one, demo),
    hash: pin,
    organizationId,
    classId,
    at: since(now, weeks),
  }));
  const db = database();
  await together(db, [
    addingOrganization(db, { id: organizationId, name: demo.name, slug: demo.shortName, demo: true, createdAt: at }),
    logged({ at, organizationId, event: 'organization-added' }),
    addingClass(db, { id: classId, organizationId, name: demo.class, createdAt: at }),
    logged({ at, organizationId, event: 'class-added', details: { class: classId } }),
    ...[...staff, ...apprentices].sort((a, b) => a.at.getTime() - b.at.getTime()).flatMap(addingLoggedPerson),
  ]);
  const [instructor] = staff.filter(({ roles: [role] }) => role === 'instructor');
  return {
    learners: learners.map(({ id, ...learner }) => ({ ...learner, desk: inventedDesk(id, organizationId) })),
    demoClass: { organizationId, classId, instructorId: instructor?.id ?? '' },
  };
}

function personOf({ id, name, handle }: Pick<DemoApprentice, 'name' | 'handle'> & { id: string }, { shortName }: Demo) {
  const address = storedAddress(formatUserName({ handle, slug: shortName }));
  return { id, name, address, roles: ['learner'] as const };
}

function staffOf({ administrator, instructors, shopLead }: Demo) {
  return [
    { ...administrator, roles: ['administrator'] as const, keeper: true },
    ...instructors.map((one) => ({ ...one, roles: ['instructor'] as const })),
    { ...shopLead, roles: ['shop-lead'] as const },
  ];
}

/** The morning of the first working day of the last weeks. */
function since(now: Date, weeks: number): Date {
  return minutesAfter(workingDays(now, weeks)[0] ?? now, OFFICE_OPENS);
}

function addingLoggedPerson(person: NewPerson): Statement[] {
  const { id, at, organizationId, roles, classId } = person;
  const details = { roles, ...(classId && { class: classId }) };
  return [...addingPerson(person), logged({ at, organizationId, event: 'person-added', personId: id, details })];
}

/** Nobody signed in did it. */
function logged(entry: Omit<NewLogEntry, 'actorId'>): Statement {
  return addingLogEntry(database(), { ...entry, actorId: null });
}
