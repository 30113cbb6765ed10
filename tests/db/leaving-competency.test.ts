import { eq } from 'drizzle-orm';
import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { erasingMember, mergingMembers } from '@/db/queries/leaving';
import { NOBODY } from '@/db/queries/leaving-questions';
import {
  applications,
  certificateEvents,
  certificates,
  evidence,
  evidenceDue,
  intakes,
  observations,
  panelJudges,
  panelRatings,
  signOffs,
  topicStates,
} from '@/db/schema';
import { claimThen } from '@/db/together';
import { addHeld, addPersonOf, idOfWhatStays, makeShopAndCollege } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const organizationId = 'harbour';
const panelOf = (userId: string) => `panel-${idOfWhatStays(userId, organizationId)}`;
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' });
  for (const id of ['kit', 'twin']) {
    await addPersonOf(db, id, { harbour: 'learner' });
    await addHeld(db, id, organizationId, id);
  }
});

async function erase(userId: string): Promise<void> {
  const { claim, others } = erasingMember(db, { organizationId, userId }, 'ada');
  expect(await claimThen(db, claim, others)).toBe(true);
}

async function merge(): Promise<void> {
  const { claim, others } = mergingMembers(db, { organizationId, keptId: 'kit', doubleId: 'twin', role: 'learner' });
  expect(await claimThen(db, claim, others)).toBe(true);
}

test('a certificate of somebody erased stays with what it rested on, without them', async () => {
  await erase('kit');
  const id = `certificate-${idOfWhatStays('kit', organizationId)}`;
  const [kept] = await db.select().from(certificates).where(eq(certificates.id, id));
  expect(kept).toMatchObject({ learnerId: NOBODY, jwt: '', consent: { name: false, results: false } });
  expect(kept?.standing.decision).toBe('ready');
  const events = await db.select().from(certificateEvents).where(eq(certificateEvents.certificateId, id));
  expect(events).toMatchObject([{ kind: 'suspended', by: NOBODY }]);
  const asked = await db.select().from(applications).where(eq(applications.learnerId, NOBODY));
  expect(asked.map(({ state }) => state)).toEqual(['granted']);
});

test('what two erased judges rated stays apart, and does not say who they were', async () => {
  const panelId = panelOf('kit');
  await db.insert(panelJudges).values({ panelId, judgeId: 'twin' });
  await db
    .insert(panelRatings)
    .values({ panelId, judgeId: 'twin', round: 1, task: 1, expected: 0.75, ratedAt: new Date(0) });
  await erase('kit');
  await erase('twin');
  const rated = await db.select().from(panelRatings).where(eq(panelRatings.panelId, panelId));
  expect(rated.map(({ expected }) => expected).sort()).toEqual([0.5, 0.75]);
  expect(new Set(rated.map(({ judgeId }) => judgeId)).size).toBe(2);
});

test('who is kept has the evidence of both, and what it comes to is to be worked out anew', async () => {
  await merge();
  for (const table of [evidence, intakes, observations, signOffs, certificates])
    expect((await db.select().from(table)).map(({ learnerId }) => learnerId)).toEqual(['kit', 'kit']);
  expect(await db.select().from(topicStates)).toEqual([]);
  expect((await db.select().from(evidenceDue)).map(({ work }) => work)).toContain('person kit');
});

test('where both judged, the ratings of who is kept count', async () => {
  const panelId = panelOf('twin');
  await db.insert(panelJudges).values({ panelId, judgeId: 'kit' });
  await db
    .insert(panelRatings)
    .values({ panelId, judgeId: 'kit', round: 1, task: 1, expected: 0.25, ratedAt: new Date(0) });
  await merge();
  const rated = await db.select().from(panelRatings).where(eq(panelRatings.panelId, panelId));
  expect(rated.map(({ judgeId, expected }) => [judgeId, expected])).toEqual([['kit', 0.25]]);
});
