import { setImmediate } from 'node:timers/promises';
import type { Db } from '@/db/client';
import { countLogged, listEvidence, loggingEvidence } from '@/db/queries/evidence';
import { type DueRow, listDue, takingDue } from '@/db/queries/evidence-due';
import { findOrganization } from '@/db/queries/organizations';
import { claimThen } from '@/db/together';
import type { Evidence } from '@/lib/competency/evidence';
import type { Derived } from '@/lib/competency/response';
import { revisionsDue } from '@/lib/competency/revisions';
import { log } from '../log';
import { settingsFrom } from '../organization-settings';
import { randomId } from '../random-id';
import { deriveEvidence } from './derive';
import { keepingStatesOf } from './states';

/** Work that is written together at most; a statement takes no more than so many values. */
const AT_ONCE = 100;
/** Somebody else wrote of the same person so many times in a row: they are at it, and whoever reads next goes on. */
const TRIES = 8;

interface Of {
  organizationId: string;
  learnerId?: string | undefined;
}

/**
 * Writes the evidence that is owed in an organisation, or of one person there: appends to the log what differs, and brings the
 * states up to date with it, all or nothing for each person. Safe to run again, and by two processes at once. What cannot be
 * derived stays owed.
 */
export async function settleEvidence(db: Db, of: Of): Promise<void> {
  const left: string[] = [];
  for (let tries = 0; tries < TRIES; ) {
    const due = await listDue(db, of, { limit: AT_ONCE, except: left });
    const [first] = due;
    if (!first) return;
    const own = due.filter(({ learnerId }) => learnerId === first.learnerId);
    const { failed, done } = await settlePerson(db, own);
    left.push(...failed);
    tries = done ? 0 : tries + 1;
    await setImmediate();
  }
}

/** The same after some act, which stands whatever comes of its evidence: that stays owed. */
export async function settleSoon(db: Db, of: Of): Promise<void> {
  try {
    await settleEvidence(db, of);
  } catch (err) {
    log.error({ err, organization: of.organizationId }, 'evidence not settled');
  }
}

async function settlePerson(db: Db, due: readonly DueRow[]): Promise<{ failed: string[]; done: boolean }> {
  const [first] = due;
  if (!first) return { failed: [], done: true };
  const whose = { organizationId: first.organizationId, learnerId: first.learnerId };
  // First, so that whatever comes into the log from now on is noticed.
  const count = await countLogged(db, whose);
  const { derived, failed } = await deriveAll(db, due);
  const claimed = due.filter(({ work }) => !failed.includes(work));
  if (claimed.length === 0) return { failed, done: true };
  const works = claimed.map(({ work }) => work);
  const logged = await listEvidence(db, whose, { works });
  const revisions = works.flatMap((work) =>
    revisionsDue(
      derived.get(work) ?? [],
      logged.filter((one) => one.work === work),
    ),
  );
  const everything = works.some((work) => work.startsWith(PERSON));
  const touched = everything ? 'all' : [...new Set(revisions.map(({ topic }) => topic))];
  const others = [
    ...loggingEvidence(db, whose, revisions, { id: randomId, writtenAt: new Date() }),
    ...(await keepingStates(db, whose, touched, revisions)),
  ];
  return { failed, done: await claimThen(db, takingDue(db, claimed, count), others) };
}

/** Owed with a person's id where what they have shown changed hands: nothing is derived, and all states are made anew. */
const PERSON = 'person ';

async function deriveAll(
  db: Db,
  due: readonly DueRow[],
): Promise<{ derived: Map<string, Derived[]>; failed: string[] }> {
  const derived = new Map<string, Derived[]>();
  const failed: string[] = [];
  for (const { work, learnerId } of due) {
    if (work.startsWith(PERSON)) continue;
    try {
      derived.set(work, await deriveEvidence(db, learnerId, work));
    } catch (err) {
      log.error({ err, work }, 'evidence not derived');
      failed.push(work);
    }
  }
  return { derived, failed };
}

async function keepingStates(
  db: Db,
  whose: Required<Of> & { learnerId: string },
  touched: readonly string[] | 'all',
  revisions: readonly Evidence[],
) {
  if (touched !== 'all' && touched.length === 0) return [];
  const settings = settingsFrom((await findOrganization(db, whose.organizationId))?.settings);
  return keepingStatesOf(db, whose, { topics: touched, added: revisions, halfLifeDays: settings.evidenceHalfLifeDays });
}
