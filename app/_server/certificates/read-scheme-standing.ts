import { listEvidence } from '@/db/queries/evidence';
import type { Standing } from '@/lib/readiness/intake-outcome';
import type { Scheme } from '@/lib/readiness/scheme';
import { standingUnderScheme } from '@/lib/readiness/scheme-standing';
import { database } from '../database';
import { settleEvidence } from '../evidence/settle';
import { findHeldProfile } from '../profiles';

/** What somebody's evidence comes to under a scheme, now; undefined where its role profile is not there any more. */
export async function readSchemeStanding(
  { organizationId, learnerId, scheme }: { organizationId: string; learnerId: string; scheme: Scheme },
  now: Date,
): Promise<Standing | undefined> {
  const held = await findHeldProfile(database(), organizationId, scheme.profile);
  if (!held) return undefined;
  await settleEvidence(database(), { organizationId, learnerId });
  const evidence = await listEvidence(database(), { organizationId, learnerId });
  return standingUnderScheme({ scheme, profile: held.profile, evidence, at: now.getTime() });
}
