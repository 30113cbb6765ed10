import { findAppealWork } from '@/db/queries/appeals';
import { findApplicationWork } from '@/db/queries/applications';
import { findAssignmentsOrganization, isGivenTo } from '@/db/queries/assignments';
import { findWork } from '@/db/queries/attempts';
import { findCertificateWork } from '@/db/queries/certificates';
import { findClass } from '@/db/queries/classes';
import { findIntakeWork } from '@/db/queries/intakes';
import { findInvitation } from '@/db/queries/invitations';
import { findMember, isInstallationsKeeper, listHolding } from '@/db/queries/members';
import { findObservation } from '@/db/queries/observations';
import { findPanelsOrganization } from '@/db/queries/panels';
import { findPicture } from '@/db/queries/pictures';
import { findRegradesOrganization } from '@/db/queries/regrades';
import { findSetsOrganization } from '@/db/queries/sets';
import { findSignOff } from '@/db/queries/sign-offs';
import { findSittingWork } from '@/db/queries/sittings';
import { findTurnWork } from '@/db/queries/turns';
import { findQuestionsOrganization } from '@/db/queries/written-questions';
import type { Actor } from '@/lib/accounts/actor';
import type { Resource } from '@/lib/accounts/resource';
import { parseRoles } from '@/lib/accounts/roles';
import { database } from './database';
import type { Behind } from './doors';
import { setReaderFor } from './sets/set-reader';

/** Gives the id that a request carries under a name; undefined where it carries none. */
export type IdNamed = (name: string) => string | undefined;

/** What a request is about; undefined where there is no such thing. */
export async function resourceBehind(
  behind: Behind,
  actor: Actor | null,
  idNamed: IdNamed,
): Promise<Resource | undefined> {
  if (behind === 'public' || behind === 'installation') return { kind: behind };
  if (!actor) return undefined;
  const { personId, organizationId } = actor;
  if (behind === 'account') return { kind: 'account', personId };
  if (behind === 'chosen-organization') return ofOrganization(idNamed('organizationId'));
  if (!organizationId) return undefined;
  if (behind === 'organization') return ofOrganization(organizationId);
  if (behind === 'own-work') return { kind: 'work', organizationId, personId };
  return named(behind, { personId, organizationId, actor }, idNamed);
}

type Named = keyof typeof nameOfId;

interface Asking {
  personId: string;
  organizationId: string;
  actor: Actor;
}

async function named(behind: Named, asking: Asking, idNamed: IdNamed): Promise<Resource | undefined> {
  const id = idNamed(nameOfId[behind]);
  if (!id) return undefined;
  switch (behind) {
    case 'attempt':
      return ofWork(await findWork(database(), id));
    case 'sitting':
      return ofWork(await findSittingWork(database(), id));
    case 'member':
      return memberOf(asking.organizationId, id);
    case 'class':
      return ofOrganization((await findClass(database(), id))?.organizationId);
    case 'invitation':
      return ofOrganization((await findInvitation(database(), id))?.organizationId);
    case 'written-question':
      return ofOrganization(await findQuestionsOrganization(database(), id));
    case 'picture':
      return ofOrganization((await findPicture(database(), id))?.organizationId);
    case 'set':
      return ofOrganization(await findSetsOrganization(database(), id, setReaderFor(asking.actor)));
    case 'assignment':
      return ofOrganization(await findAssignmentsOrganization(database(), id));
    case 'given-assignment':
      return givenTo(asking, id);
    case 'turn':
      return ofWork(await findTurnWork(database(), id));
    case 'intake':
      return ofWork(await findIntakeWork(database(), id));
    case 'learners-intake':
      return ofOrganization((await findIntakeWork(database(), id))?.organizationId);
    case 'learners-attempt':
      return ofOrganization((await findWork(database(), id))?.organizationId ?? undefined);
    case 'learners-sitting':
      return ofOrganization((await findSittingWork(database(), id))?.organizationId);
    case 'learners-turn':
      return ofOrganization((await findTurnWork(database(), id))?.organizationId);
    case 'appeal':
      return ofOrganization((await findAppealWork(database(), id))?.organizationId);
    case 'own-appeal':
      return ofWork(await findAppealWork(database(), id));
    case 'observation':
      return ofOrganization((await findObservation(database(), id))?.organizationId);
    case 'sign-off':
      return ofOrganization((await findSignOff(database(), id))?.organizationId);
    case 'application':
      return ofOrganization((await findApplicationWork(database(), id))?.organizationId);
    case 'own-application':
      return ofWork(await findApplicationWork(database(), id));
    case 'panel':
      return ofOrganization(await findPanelsOrganization(database(), id));
    case 'regrade':
      return ofOrganization(await findRegradesOrganization(database(), id));
    case 'certificate':
      return ofOrganization((await findCertificateWork(database(), id))?.organizationId);
    case 'own-certificate':
      return ofWork(await findCertificateWork(database(), id));
  }
}

const nameOfId = {
  attempt: 'attemptId',
  sitting: 'sittingId',
  member: 'personId',
  class: 'classId',
  invitation: 'invitationId',
  'written-question': 'questionId',
  picture: 'pictureId',
  set: 'setId',
  assignment: 'assignmentId',
  'given-assignment': 'assignmentId',
  turn: 'turnId',
  intake: 'intakeId',
  'learners-intake': 'intakeId',
  'learners-attempt': 'attemptId',
  'learners-sitting': 'sittingId',
  'learners-turn': 'turnId',
  appeal: 'appealId',
  'own-appeal': 'appealId',
  regrade: 'regradeId',
  panel: 'panelId',
  application: 'applicationId',
  'own-application': 'applicationId',
  certificate: 'certificateId',
  'own-certificate': 'certificateId',
  observation: 'observationId',
  'sign-off': 'signOffId',
} as const;

function ofOrganization(organizationId: string | undefined): Resource | undefined {
  return organizationId === undefined ? undefined : { kind: 'organization', organizationId };
}

function ofWork(work: { learnerId: string; organizationId: string | null } | undefined): Resource | undefined {
  // An attempt from before there were accounts belongs to nobody.
  if (!work?.organizationId) return undefined;
  return { kind: 'work', organizationId: work.organizationId, personId: work.learnerId };
}

/** An assignment as work of whom it is given to; nothing for anybody else. */
async function givenTo({ personId, organizationId }: Asking, assignmentId: string): Promise<Resource | undefined> {
  const given = await isGivenTo(database(), { assignmentId, organizationId, userId: personId });
  return given ? { kind: 'work', organizationId, personId } : undefined;
}

/** A member of an organisation, deactivated or not. */
export async function memberOf(organizationId: string, personId: string): Promise<Resource | undefined> {
  const member = await findMember(database(), organizationId, personId);
  if (!member) return undefined;
  // Deactivated there counts too: they may be let in again, and with what they sign in with here.
  const elsewhere = (await listHolding(database(), personId)).some((one) => one.organizationId !== organizationId);
  const ownSignIn = elsewhere || (await isInstallationsKeeper(database(), personId));
  return { kind: 'member', organizationId, personId, roles: parseRoles(member.role), ownSignIn };
}
