import { database } from '@/app/_server/database';
import { settleEvidence } from '@/app/_server/evidence/settle';
import { findProfile } from '@/app/_server/profiles';
import { randomId } from '@/app/_server/random-id';
import { readEvidence } from '@/app/_server/readiness/read-evidence';
import { endOfSignOff } from '@/app/_server/readiness/store-sign-off';
import { owingObservation } from '@/db/queries/evidence-due';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listNamesHolding } from '@/db/queries/names';
import { addingObservation } from '@/db/queries/observations';
import { addingSignOff } from '@/db/queries/sign-offs';
import { together } from '@/db/together';
import { usualSettings } from '@/lib/accounts/settings';
import { standingAndChanges } from '@/lib/readiness/board';
import { noEvidence } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import type { DemoLearner } from './play-history';
import { minutesAfter, workingDays } from './working-days';

const AFTERNOON = 14 * 60;

/**
 * Has an instructor watch the first apprentice at work for a role that asks for it, and the shop lead sign off the first who has
 * shown enough to assist. Whoever has not shown it is not signed off, in a demo either.
 */
export async function makeSignOffs(learners: readonly DemoLearner[], now: Date): Promise<void> {
  const [first] = learners;
  if (!first) return;
  const { organizationId } = first.desk;
  const db = database();
  const [instructor] = await listNamesHolding(db, organizationId, ['instructor']);
  const [lead] = await listNamesHolding(db, organizationId, ['shop-lead']);
  const [assist, alone] = [
    await findProfile(db, organizationId, 'assist-under-supervision'),
    await findProfile(db, organizationId, 'low-pressure-unsupervised'),
  ];
  const yesterday = minutesAfter(workingDays(now, 1).at(-1) ?? now, AFTERNOON);
  if (instructor && alone) await watch(first, alone, instructor.id, yesterday);
  if (lead && assist) await signFirstReady(learners, assist, lead.id, yesterday);
}

async function watch({ desk }: DemoLearner, profile: RoleProfile, observedBy: string, at: Date): Promise<void> {
  const db = database();
  const id = randomId();
  const items = (profile.handsOn ?? []).map(({ text, ...item }, index) => ({
    ...item,
    text: text.en,
    score: index === 1 ? item.outOf - 1 : item.outOf,
  }));
  const { organizationId, learnerId } = desk;
  const row = { id, organizationId, learnerId, profileId: profile.id, items, unsafe: false };
  const comment = 'Invented for the demo: on the training bench, calm and clean.';
  const details = { observation: id, profile: profile.id, unsafe: false };
  await together(db, [
    addingObservation(db, { ...row, comment, observedBy, observedAt: at, writtenAt: at }),
    owingObservation(db, id, at),
    addingLogEntry(db, entry('observation-written', { at, organizationId, actorId: observedBy, learnerId, details })),
  ]);
  await settleEvidence(db, { organizationId, learnerId });
}

async function signFirstReady(
  learners: readonly DemoLearner[],
  profile: RoleProfile,
  signedBy: string,
  at: Date,
): Promise<void> {
  const db = database();
  for (const { desk } of learners) {
    const { organizationId, learnerId } = desk;
    const evidence = (await readEvidence(db, { organizationId, learnerId }, profile)).get(learnerId) ?? noEvidence;
    const { standing } = standingAndChanges(evidence, profile, usualSettings.evidenceHalfLifeDays, at.getTime());
    if (standing.decision !== 'ready') continue;
    const id = randomId();
    const row = { id, organizationId, learnerId, profileId: profile.id, profile, standing, observationId: null };
    const comment = 'Invented for the demo: works beside somebody, and asks.';
    const endsAt = endOfSignOff({ at, profile, settings: usualSettings });
    const details = { signOff: id, profile: profile.id, version: profile.version };
    await together(db, [
      addingSignOff(db, { ...row, comment, signedBy, signedAt: at, endsAt }),
      addingLogEntry(db, entry('signed-off', { at, organizationId, actorId: signedBy, learnerId, details })),
    ]);
    return;
  }
}

function entry(
  event: 'observation-written' | 'signed-off',
  {
    learnerId: personId,
    ...rest
  }: {
    at: Date;
    organizationId: string;
    actorId: string;
    learnerId: string;
    details: Readonly<Record<string, string | number | boolean>>;
  },
) {
  return { ...rest, event, personId };
}
