import { issuing } from '@/app/_server/certificates/issue';
import { newIssuerKey } from '@/app/_server/certificates/issuer-keys';
import { database } from '@/app/_server/database';
import { randomId } from '@/app/_server/random-id';
import { listSchemes } from '@/app/_server/schemes';
import { addingIssuerKey } from '@/db/queries/issuer-keys';
import { listNamesHolding } from '@/db/queries/names';
import { applications } from '@/db/schema';
import { together } from '@/db/together';
import type { Standing } from '@/lib/readiness/intake-outcome';
import type { Scheme } from '@/lib/readiness/scheme';
import type { DemoLearner } from './play-history';

const DAY = 86_400_000;

/** Gives the apprentice whom content names a certificate, invented like everything they did, on an application granted days ago. */
export async function makeCertificate(learners: readonly DemoLearner[], now: Date): Promise<void> {
  const holder = learners.find(({ certified }) => certified);
  if (!holder) return;
  const { organizationId, learnerId } = holder.desk;
  const db = database();
  const [administrator] = await listNamesHolding(db, organizationId, ['administrator']);
  const [scheme] = await listSchemes(db, organizationId);
  if (!administrator || !scheme) return;
  const issuedBy = administrator.id;
  const { signer: _, ...key } = await newIssuerKey(organizationId, issuedBy, before(now, 20));
  const applicationId = randomId();
  const decidedAt = before(now, 6);
  const application = {
    ...{ id: applicationId, organizationId, learnerId, schemeId: scheme.id, scheme, demo: true },
    state: 'granted' as const,
    ...{ appliedAt: before(now, 20), decidedBy: issuedBy, decidedAt, reason: 'Invented: shown on every topic.' },
  };
  await together(db, [addingIssuerKey(db, key), db.insert(applications).values(application)]);
  const standing = inventedStanding(scheme, decidedAt);
  const comment = 'Invented for the demo.';
  const holds = { organizationId, learnerId, holderName: holder.name };
  const grounds = { ...holds, scheme, applicationId, standing, comment, issuedBy, demo: true };
  const certificate = await issuing(grounds, before(now, 5));
  if (typeof certificate === 'string') throw new Error(`No certificate for the demo: ${certificate}`);
  await together(db, [certificate.claim, ...certificate.others]);
}

function before(now: Date, days: number): Date {
  return new Date(now.getTime() - days * DAY);
}

/** Shown on every topic, one logit above the line, by somewhat more than the scheme asks for. */
function inventedStanding({ profile, blueprint, cut: { ability }, confidence }: Scheme, at: Date): Standing {
  const topics = blueprint.map(({ topic, atLeast }) => ({
    ...{ topic, cut: ability, confidence, decision: 'ready' as const, chance: 0.97, mean: ability + 1 },
    ...{ interval: [ability + 0.1, ability + 1.9] as const, responses: atLeast + 3, cases: 4, newestAt: at.getTime() },
  }));
  const safety = { code: 'clean', cases: 8, events: 0 } as const;
  return { profileId: profile, profileVersion: 1, decision: 'ready', topics, safety, at: at.getTime() };
}
