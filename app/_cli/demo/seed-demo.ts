import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { countAttempts } from '@/db/queries/attempts';
import { countUsers } from '@/db/queries/users';
import { CaseLadder } from './case-ladder';
import type { Demo } from './demo-content';
import { fillPools } from './fill-pools';
import { makeCertificate } from './make-certificate';
import { makeOrganization } from './make-organization';
import { makePanel } from './make-panel';
import { makeSignOffs } from './make-sign-offs';
import { playAssignments } from './play-assignments';
import { playHistory } from './play-history';
import { playIntake } from './play-intake';
import { playQuestions } from './play-questions';
import { writeQuestions } from './write-questions';

/** Names all draws of cases. */
const WORD = 'demo';

/**
 * Fills an empty database; one with people is left alone, and one with attempts, which wait for the first administrator.
 *
 * @param tell  Told of each apprentice once the history stands.
 * @returns whether it did.
 */
export async function seedDemo(
  demo: Demo,
  now: Date,
  tell: (name: string, attempts: number) => void,
): Promise<boolean> {
  const db = database();
  if ((await countUsers(db)) + (await countAttempts(db)) > 0) return false;
  const ladder = new CaseLadder(catalogue(), WORD);
  const { learners, demoClass } = await makeOrganization(demo, now);
  const [first] = learners;
  if (first) await writeQuestions(first.desk.organizationId, now);
  for (const learner of learners) {
    const played = await playHistory(learner, ladder, now);
    await playQuestions(learner, now);
    tell(learner.name, played);
  }
  await playAssignments(demoClass, learners, now);
  if (first) await makePanel(first.desk.organizationId, now);
  await fillPools(ladder, now);
  await makeSignOffs(learners, now);
  await makeCertificate(learners, now);
  await playIntake(demoClass, learners, now);
  return true;
}
