import { finishingIntake, type Intake, type IntakeEnd, listOverdueIntakes } from '@/db/queries/intakes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import { emptyTally, posteriorAt } from '@/lib/competency/tally';
import type { IntakeOutcome } from '@/lib/readiness/intake-outcome';
import { standingOf } from '@/lib/readiness/standing';
import { database } from '../database';
import { deskLeft } from '../permit';
import { handIn } from '../sittings/hand-in';
import { openAt } from '../turns/turn-clock';
import { isIntakeOverdue } from './clock';
import { readSoFar, type SoFar } from './so-far';

/**
 * Finishes a new-hire check that is under way: what is answered is marked, what it came to is stored. One whose time is over
 * counts as finished when it ended.
 *
 * @param by  Who stopped it; left out where it ended by itself.
 */
export async function finishIntake(intake: Intake, end: IntakeEnd, now: Date, by?: string): Promise<void> {
  const db = database();
  const { id, learnerId, organizationId, endsAt, sittingId } = intake;
  const desk = deskLeft(learnerId, organizationId);
  const at = endsAt && isIntakeOverdue(intake, now) ? endsAt : now;
  if (sittingId) await handIn(desk, sittingId, now);
  const outcome = outcomeOf(intake, await readSoFar(desk, intake, at), at);
  await claimThen(db, finishingIntake(db, { id, at, end, outcome }), [
    addingLogEntry(db, {
      ...{ at: now, organizationId, actorId: by ?? null, personId: learnerId },
      ...{ event: end === 'stopped' ? 'intake-stopped' : 'intake-finished', details: { intake: id, end } },
    }),
  ]);
}

/** Finishes those that ran out of time while nobody looked: of one person, or of an organisation. */
export async function finishOverdueIntakes(
  of: { organizationId: string; learnerId?: string },
  now: Date,
): Promise<void> {
  for (const intake of await listOverdueIntakes(database(), of, openAt(now))) await finishIntake(intake, 'time', now);
}

function outcomeOf({ profile, startedAt }: Intake, { tasks, state }: SoFar, at: Date): IntakeOutcome {
  const told = tasks.flatMap((task) => task.told);
  const topics = new Map(
    profile.topics.map(({ topic }) => {
      const own = told.filter((one) => one.topic === topic);
      const tally = state.tallies.get(topic) ?? emptyTally;
      const newestAt = own.length > 0 ? Math.max(...own.map((one) => one.at)) : null;
      const cases = own.filter(({ source }) => source === 'case').length;
      return [topic, { posterior: posteriorAt(tally, tally.at, null), responses: tally.count, cases, newestAt }];
    }),
  );
  const cases = tasks.filter(({ attemptId, done }) => attemptId !== null && done);
  const safety = cases.map((task) => ({ events: task.told[0]?.safetyEvents ?? 0 })).reverse();
  const minutes = startedAt ? (at.getTime() - startedAt.getTime()) / 60_000 : 0;
  return {
    ...standingOf({ profile, topics, safety, at: at.getTime() }),
    tasks: tasks.length,
    minutes: Math.round(minutes),
  };
}
