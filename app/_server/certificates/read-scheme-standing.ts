import { listHeldEvidence } from '@/db/queries/held-competency';
import type { Standing } from '@/lib/readiness/intake-outcome';
import type { Scheme } from '@/lib/readiness/scheme';
import { standingUnderScheme } from '@/lib/readiness/scheme-standing';
import { database } from '../database';
import { findHeldProfile } from '../profiles';

/** What somebody's evidence comes to under a scheme, now; undefined where its role profile is not there any more. */
export async function readSchemeStanding(
  { organizationId, learnerId, scheme }: { organizationId: string; learnerId: string; scheme: Scheme },
  now: Date,
): Promise<Standing | undefined> {
  const held = await findHeldProfile(database(), organizationId, scheme.profile);
  if (!held) return undefined;
  const logged = await listHeldEvidence(database(), learnerId, organizationId);
  const evidence = logged.map((row) => ({ ...row, at: row.at.getTime() }));
  return standingUnderScheme({ scheme, profile: held.profile, evidence, at: now.getTime() });
}
