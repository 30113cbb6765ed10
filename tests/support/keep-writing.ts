import { openDatabase } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { anAct, anAttempt } from './attempt-rows';

/** Starts attempts and adds acts to them, until it is stopped. A process of its own, as a server beside a back-up is. */
const [file = ''] = process.argv.slice(2);
const db = openDatabase(file);
for (let attempt = 1; ; attempt++) {
  const attemptId = `attempt-${attempt}`;
  await recordAttempt(db, anAttempt({ id: attemptId, key: attemptId }));
  for (let seq = 1; seq <= 20; seq++) await recordAct(db, 'ada', anAct({ attemptId, seq, key: `act-${seq}` }));
}
