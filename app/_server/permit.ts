import type { Actor } from '@/lib/accounts/actor';
import { can } from '@/lib/accounts/can';
import type { Action } from '@/lib/accounts/permissions';
import type { Resource } from '@/lib/accounts/resource';
import type { Session } from './session';

declare const asked: unique symbol;

/**
 * Proof that `can` was asked and said yes. What reads or writes for somebody takes one, and only `permit` makes one, so
 * that nothing can be done that nobody asked about.
 */
export interface Permit {
  readonly session: Session | null;
  readonly resource: Resource;
  readonly [asked]: true;
}

/** A permit of somebody signed in. */
export interface SignedInPermit extends Permit {
  readonly session: Session;
}

/** Whose work it is, and in which organisation. */
export interface Desk {
  readonly learnerId: string;
  readonly organizationId: string;
  readonly [asked]: true;
}

/** A permit where the table has one for it; undefined where it has not. */
export function permit(session: Session | null, action: Action, resource: Resource): Permit | undefined {
  if (!can(session?.actor ?? null, action, resource)) return undefined;
  return { session, resource } as Permit;
}

/** The actor's own desk. @throws for an actor who is let into no organisation, whom no permission for work reaches. */
export function deskOf({ session }: SignedInPermit): Desk {
  const { personId, organizationId } = session.actor;
  if (!organizationId) throw new Error('No organisation to work in');
  return { learnerId: personId, organizationId } as Desk;
}

/**
 * A learner's desk, for somebody who may look at it from beside: the permit is for what they teach in an organisation.
 *
 * @throws for a permit for anything else.
 */
export function deskBeside({ resource }: SignedInPermit, learnerId: string): Desk {
  if (resource.kind !== 'organization') throw new Error(`No looking over shoulders with a permit for ${resource.kind}`);
  return { learnerId, organizationId: resource.organizationId } as Desk;
}

/** A desk that nobody sits at in person: of the invented people of a demo. */
export function inventedDesk(learnerId: string, organizationId: string): Desk {
  return { learnerId, organizationId } as Desk;
}

/** The desk of somebody who left it: what ran out of time there is handed in for them. */
export function deskLeft(learnerId: string, organizationId: string): Desk {
  return { learnerId, organizationId } as Desk;
}

/** The organisation being worked in. @throws for an actor who is let into none. */
export function organizationOf({ session }: SignedInPermit): string {
  const { organizationId } = session.actor as Actor;
  if (!organizationId) throw new Error('No organisation to work in');
  return organizationId;
}
