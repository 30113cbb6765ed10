import { countAttempts } from '@/db/queries/attempts';
import { database } from '../_server/database';
import { seedDemo } from '../_server/seed-demo';
import { requireLearner } from '../_server/session';

/** Puts invented example attempts into an empty database; leaves one with attempts as it is. */
const learner = await requireLearner();
if ((await countAttempts(database())) > 0) console.log('There are attempts already; no examples added.');
else console.log(`${await seedDemo(learner.id)} example attempts added, marked as invented.`);
