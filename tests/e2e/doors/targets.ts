import { randomBytes } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Behind } from '@/app/_server/doors';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { addingMember } from '@/db/queries/members';
import { addingPicture } from '@/db/queries/pictures';
import { addingSitting } from '@/db/queries/sittings';
import { addingUser } from '@/db/queries/users';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { classes, invitations } from '@/db/schema';
import { together } from '@/db/together';
import type { Actor } from '@/lib/accounts/actor';
import type { Resource } from '@/lib/accounts/resource';
import { type Role, roles } from '@/lib/accounts/roles';
import { anAttempt } from '../../support/attempt-rows';
import { codeOf, storedCase } from '../../support/case-codes';
import { college, harbour, people } from '../../support/people';
import { placeFor } from '../../support/server';
import { aWrittenQuestion } from '../../support/written-questions';
import { addCertificateOf } from './certificate-targets';
import { addIntakeOf } from './intake-targets';
import { addObservation, addSignOff } from './readiness-targets';
import { addApplicationOf, addPanelOf } from './scheme-targets';
import { addAppeal, addAssignmentOf, addGiven, addRegrade, addSetOf, addTurnOf } from './teaching-targets';

/** The server that the walk has for itself. */
export const DOORS_PORT = 3139;

/** Something that a door may be asked for: the ids that name it, and what permission should make of it. */
export interface Target {
  name: string;
  ids: Readonly<Record<string, string>>;
  /** Undefined for what is not there, or not there for this actor. */
  resource: (actor: Actor | null) => Resource | undefined;
}

const theCase = storedCase(codeOf('lift-pump-weak', 800));
const at = new Date(Date.UTC(2026, 0, 1));

/** Everything that may stand behind a door of a kind: one's own, another person's, another organisation's, and nothing. */
export async function targetsBehind(db: Db, behind: Behind, actor: Actor | null): Promise<Target[]> {
  switch (behind) {
    case 'public':
    case 'installation':
      return [{ name: behind, ids: {}, resource: () => ({ kind: behind }) }];
    case 'account':
      return [{ name: 'own account', ids: {}, resource: account }];
    case 'organization':
      return [{ name: 'own organisation', ids: {}, resource: (asking) => organization(asking?.organizationId) }];
    case 'chosen-organization':
      return [harbour.id, college.id, 'no-such'].map((id) => ({
        name: `organisation ${id}`,
        ids: { organizationId: id },
        resource: () => organization(id),
      }));
    case 'own-work':
      return [{ name: 'own work', ids: {}, resource: (asking) => work(asking?.organizationId, asking?.personId) }];
    case 'attempt':
      return worksOf(db, actor, 'attemptId', addAttempt);
    case 'sitting':
      return worksOf(db, actor, 'sittingId', addSitting);
    case 'member':
      return memberTargets(db, actor);
    case 'class':
      return owned(db, 'classId', addClass);
    case 'invitation':
      return owned(db, 'invitationId', addInvitation);
    case 'written-question':
      return owned(db, 'questionId', addQuestion);
    case 'picture':
      return owned(db, 'pictureId', addPicture);
    case 'set':
      return owned(db, 'setId', addSetOf);
    case 'assignment':
      return owned(db, 'assignmentId', addAssignmentOf);
    case 'application':
      return owned(db, 'applicationId', ofSomeone(addApplicationOf));
    case 'own-application':
      return worksOf(db, actor, 'applicationId', addApplicationOf);
    case 'panel':
      return owned(db, 'panelId', addPanelOf);
    case 'regrade':
      return owned(db, 'regradeId', addRegrade);
    case 'observation':
      return owned(db, 'observationId', ofSomeone(addObservation));
    case 'sign-off':
      return owned(db, 'signOffId', ofSomeone(addSignOff));
    case 'appeal':
      return owned(db, 'appealId', ofSomeone(addAppeal));
    case 'learners-attempt':
      return owned(db, 'attemptId', ofSomeone(addAnotherCase));
    case 'learners-sitting':
      return owned(db, 'sittingId', ofSomeone(addSitting));
    case 'learners-turn':
      return owned(db, 'turnId', ofSomeone(addTurnOf));
    case 'turn':
      return worksOf(db, actor, 'turnId', addTurnOf);
    case 'own-appeal':
      return worksOf(db, actor, 'appealId', addAppeal);
    case 'intake':
      return worksOf(db, actor, 'intakeId', addIntakeOf);
    case 'learners-intake':
      return owned(db, 'intakeId', ofSomeone(addIntakeOf));
    case 'certificate':
      return owned(db, 'certificateId', ofSomeone(addCertificateOf));
    case 'own-certificate':
      return worksOf(db, actor, 'certificateId', addCertificateOf);
    case 'given-assignment':
      return worksOf(db, actor, 'assignmentId', addGiven);
  }
}

function account(actor: Actor | null): Resource | undefined {
  return actor ? { kind: 'account', personId: actor.personId } : undefined;
}

function organization(organizationId: string | null | undefined): Resource | undefined {
  return organizationId ? { kind: 'organization', organizationId } : undefined;
}

function work(organizationId: string | null | undefined, personId: string | undefined): Resource | undefined {
  return organizationId && personId ? { kind: 'work', organizationId, personId } : undefined;
}

interface Whose {
  id: string;
  learnerId: string;
  organizationId: string;
}

/** Work of the actor's own, of another person's and of another organisation's. */
async function worksOf(
  db: Db,
  actor: Actor | null,
  idName: string,
  add: (db: Db, whose: Whose) => Promise<unknown>,
): Promise<Target[]> {
  const whose = [
    {
      name: 'own',
      personId: actor?.personId ?? people.learner.id,
      organizationId: actor?.organizationId ?? harbour.id,
    },
    { name: 'another person’s', personId: people.secondLearner.id, organizationId: harbour.id },
    { name: 'another organisation’s', personId: people.stranger.id, organizationId: college.id },
  ];
  const targets = whose.map(async ({ name, personId, organizationId }): Promise<Target> => {
    const id = randomId();
    await add(db, { id, learnerId: personId, organizationId });
    return { name: `${name} work`, ids: { [idName]: id }, resource: () => work(organizationId, personId) };
  });
  return [
    ...(await Promise.all(targets)),
    { name: 'no work', ids: { [idName]: randomId() }, resource: () => undefined },
  ];
}

/** Adds work of somebody in an organisation, for those who teach there. */
function ofSomeone(add: (db: Db, whose: Whose) => Promise<unknown>) {
  return (db: Db, id: string, organizationId: string) => {
    const learnerId = organizationId === harbour.id ? people.secondLearner.id : people.stranger.id;
    return add(db, { id, learnerId, organizationId });
  };
}

function addAttempt(db: Db, whose: Whose) {
  return recordAttempt(db, anAttempt({ ...whose, key: whose.id, coached: true, ...theCase }));
}

/** Of a case that nobody who walks is at themselves: whoever is may not look at another's work at it. */
function addAnotherCase(db: Db, whose: Whose) {
  return recordAttempt(db, anAttempt({ ...whose, key: whose.id, ...storedCase(codeOf('lift-pump-weak', 700)) }));
}

function addSitting(db: Db, whose: Whose) {
  return together(db, [
    addingSitting(db, { ...whose, key: whose.id, mode: 'drill', topics: ['filtration'], createdAt: at }),
  ]);
}

/** Somebody new for every role in both organisations, so that what is done to one is done to nobody else. */
async function memberTargets(db: Db, actor: Actor | null): Promise<Target[]> {
  const made = [harbour.id, college.id].flatMap((organizationId) =>
    roles.map((role) => addMember(db, organizationId, role)),
  );
  const self = actor && { name: 'themselves', ids: { personId: actor.personId }, resource: memberThemselves };
  return [
    ...(await Promise.all(made)),
    ...(self ? [self] : []),
    { name: 'nobody', ids: { personId: randomId() }, resource: () => undefined },
  ];
}

function memberThemselves(actor: Actor | null): Resource | undefined {
  if (!actor?.organizationId) return undefined;
  const { organizationId, personId, roles: held, keeper, organizationIds } = actor;
  return { kind: 'member', organizationId, personId, roles: held, ownSignIn: keeper || organizationIds.length > 1 };
}

async function addMember(db: Db, organizationId: string, role: Role): Promise<Target> {
  const id = randomId();
  await together(db, [
    addingUser(db, { id, name: `Target ${id}`, email: `${id}@target.invalid`, createdAt: at, updatedAt: at }),
    addingMember(db, { id, organizationId, userId: id, role, createdAt: at }),
  ]);
  const resource: Resource = { kind: 'member', organizationId, personId: id, roles: [role], ownSignIn: false };
  return {
    name: `${role} of ${organizationId}`,
    ids: { personId: id },
    // A person is only there for the organisation that they are of.
    resource: (asking) => (asking?.organizationId === organizationId ? resource : undefined),
  };
}

async function owned(
  db: Db,
  idName: string,
  add: (db: Db, id: string, organizationId: string) => Promise<unknown>,
): Promise<Target[]> {
  const targets = [harbour.id, college.id].map(async (organizationId): Promise<Target> => {
    const id = randomId();
    await add(db, id, organizationId);
    return { name: `one of ${organizationId}`, ids: { [idName]: id }, resource: () => organization(organizationId) };
  });
  return [...(await Promise.all(targets)), { name: 'none', ids: { [idName]: randomId() }, resource: () => undefined }];
}

function addClass(db: Db, id: string, organizationId: string) {
  return db.insert(classes).values({ id, organizationId, name: `Class ${id}`, createdAt: at });
}

function addInvitation(db: Db, id: string, organizationId: string) {
  const inviterId = organizationId === harbour.id ? people.administrator.id : people.otherAdministrator.id;
  const ends = new Date(Date.now() + 86_400_000);
  return db.insert(invitations).values({
    id,
    organizationId,
    inviterId,
    role: 'learner',
    status: 'pending',
    expiresAt: ends,
    createdAt: at,
    tokenHash: id,
  });
}

/** A draft of the organisation's first instructor, or of its administrator. */
function addQuestion(db: Db, id: string, organizationId: string) {
  const writtenBy = organizationId === harbour.id ? people.instructor.id : people.otherAdministrator.id;
  return together(db, [
    addingWrittenQuestion(db, { id, organizationId, createdBy: writtenBy, createdAt: at }),
    addingDraft(db, { id: randomId(), questionId: id, number: 1, body: aWrittenQuestion(), writtenBy, at }),
  ]);
}

async function addPicture(db: Db, id: string, organizationId: string) {
  const { data } = placeFor(DOORS_PORT);
  mkdirSync(join(data, 'pictures'), { recursive: true });
  writeFileSync(join(data, 'pictures', id), 'a picture');
  const row = {
    id,
    organizationId,
    uploadedBy: people.administrator.id,
    width: 1,
    height: 1,
    bytes: 9,
    uploadedAt: at,
  };
  await together(db, [addingPicture(db, row)]);
}

function randomId(): string {
  return randomBytes(10).toString('hex');
}
