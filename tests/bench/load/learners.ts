import { randomBytes } from 'node:crypto';
import { isReadByEye } from '@/app/_server/decide-finding';
import { NO_LIMIT } from '@/app/learn/cases/[attemptId]/parse-forms';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { addingMember } from '@/db/queries/members';
import { addingUser } from '@/db/queries/users';
import { together } from '@/db/together';
import { gaugeFor, type HookUp, performCheck } from '@/lib/cases/perform-check';
import type { Shown } from '@/lib/checks/shown';
import { anAttempt } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';
import type { Caller } from '../../support/call-action';
import { harbour, newSession } from '../../support/people';
import { aCase } from '../../support/worked-attempt';

/** Something to hook up that survives it, and a verdict that can be written on what it shows. */
export interface Reading {
  hookUp: HookUp;
  finding: Readonly<Record<string, string>>;
}

/** A learner at work: signed in, with cases to take readings on. */
export interface LoadLearner {
  caller: Caller;
  attempts: readonly { id: string; readings: readonly Reading[] }[];
}

/** Causes of the cases, in turn; what is wrong matters little to what a reading costs. */
const causes = [...catalogue.causes.keys()].slice(0, 12);

/** Cases that a learner can take readings on, and what can be hooked up without harm. */
const cases = causes.map((cause) => {
  const theCase = aCase({ cause, word: `load ${cause}` });
  return { theCase, readings: harmlessReadings(theCase) };
});

/** Makes learners of the test organisation, each with a session and open attempts. */
export async function makeLearners(
  db: Db,
  origin: string,
  count: number,
  attemptsEach: number,
): Promise<LoadLearner[]> {
  const at = new Date();
  const learners: LoadLearner[] = [];
  for (let n = 0; n < count; n++) {
    const id = `load-learner-${n}`;
    await together(db, [
      addingUser(db, {
        id,
        name: `Learner ${n}`,
        email: `load-${n}@test-harbour.invalid`,
        createdAt: at,
        updatedAt: at,
      }),
      addingMember(db, { id: `${id}-member`, organizationId: harbour.id, userId: id, role: 'learner', createdAt: at }),
    ]);
    const attempts = [];
    for (let i = 0; i < attemptsEach; i++) attempts.push(await openAttempt(db, id, n + i));
    learners.push({ caller: { origin, cookie: await newSession(db, id) }, attempts });
  }
  return learners;
}

async function openAttempt(db: Db, learnerId: string, n: number) {
  const chosen = cases[n % cases.length];
  if (!chosen) throw new Error('No cases to work on');
  const { code, generatorVersion, contentHash } = chosen.theCase;
  const id = randomBytes(10).toString('hex');
  const row = { id, key: id, learnerId, organizationId: harbour.id, caseCode: code, generatorVersion, contentHash };
  await recordAttempt(db, anAttempt({ ...row, createdAt: new Date() }));
  return { id, readings: chosen.readings };
}

function harmlessReadings(theCase: ReturnType<typeof aCase>): Reading[] {
  const all = [...catalogue.checks.values()].flatMap(({ id, conditions, instruments }) =>
    conditions.flatMap((condition) => instruments.map((instrument) => ({ check: id, condition, instrument }))),
  );
  return all.flatMap((hookUp) => {
    const read = performCheck(theCase, catalogue, hookUp);
    if (!('shown' in read) || read.shown.some(({ kind }) => kind === 'destroyed' || kind === 'jet')) return [];
    const [first] = read.shown;
    return first ? [{ hookUp, finding: findingOn(hookUp, first) }] : [];
  });
}

/** That it cannot be told, which may be written on anything; with the value where it has to be read. */
function findingOn({ check, instrument }: HookUp, shown: Shown): Record<string, string> {
  const gauge = catalogue.gauges.get(instrument);
  const measured = catalogue.checks.get(check)?.quantities.find(({ id }) => id === shown.quantity);
  const read = gauge && measured && isReadByEye(gaugeFor(gauge, measured), shown) && shown.kind === 'value';
  return {
    quantity: shown.quantity,
    verdict: 'cannot-tell',
    comparison: 'too-close',
    limit: NO_LIMIT,
    words: '',
    ...(read && { value: String(Number(shown.value.toPrecision(6))), unit: shown.unit }),
  };
}
