import { listVersions } from '@/db/queries/written-questions';
import { type CaseItem, drawCase, likenessOf } from '@/lib/sets/draw-case';
import { drawQuestion } from '@/lib/sets/draw-question';
import type { SetItem } from '@/lib/sets/set-body';
import type { FoundCase } from '@/lib/wishes/find-case';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { log } from '../log';
import type { AskedPlace } from '../questions/asked-question';
import { type Drawing, turnSeed } from './turn-seed';

/** For whom something is drawn: with a learner, their own parallel case; without one, what everybody gets. */
export type DrawnFor = Drawing & { parallelFor: string | undefined };

/** Cases drawn lately: a class opens the same one within minutes, and drawing it takes long. */
const drawn = new Map<string, FoundCase | undefined>();
const MOST_DRAWN = 60;

/**
 * The case at a place of a turn; undefined where none is as the set asks. A parallel case is as hard as the one that
 * everybody would have got; where none is found, it is that one, and the log says so.
 */
export function caseAt(item: CaseItem, { parallelFor, ...at }: DrawnFor): FoundCase | undefined {
  const shared = remembered(item, turnSeed(at));
  if (!shared || parallelFor === undefined || item.kind === 'case') return shared;
  const own = drawCase(item, turnSeed(at, parallelFor), catalogue(), likenessOf(shared, catalogue()));
  if ('case' in own) return own;
  log.warn({ ...at, unmet: own.unmet }, 'No parallel case was found; the one that everybody gets is given');
  return shared;
}

function remembered(item: CaseItem, seed: string): FoundCase | undefined {
  const key = `${catalogue().contentHash} ${seed} ${JSON.stringify(item)}`;
  if (drawn.has(key)) return drawn.get(key);
  const found = drawCase(item, seed, catalogue());
  const kept = 'case' in found ? found : undefined;
  drawn.set(key, kept);
  for (const oldest of drawn.keys()) if (drawn.size > MOST_DRAWN) drawn.delete(oldest);
  return kept;
}

/** The question at a place of a turn; undefined where it was never approved. */
export async function questionAt(
  item: Exclude<SetItem, CaseItem>,
  { parallelFor, ...at }: DrawnFor,
): Promise<AskedPlace | undefined> {
  const seed = turnSeed(at, parallelFor);
  if (item.kind === 'questions') return { spec: drawQuestion(item, seed), writtenVersionId: null, seed };
  const writtenVersionId = item.versionId ?? (await approvedVersion(item.questionId));
  return writtenVersionId === undefined ? undefined : { spec: null, writtenVersionId, seed };
}

/** Of a set that was assigned before its questions were pinned. One that was retired since is still what the set asks. */
async function approvedVersion(questionId: string): Promise<string | undefined> {
  const versions = await listVersions(database(), questionId);
  const version = versions.find(({ state }) => state === 'live') ?? versions.find(({ state }) => state === 'retired');
  return version?.id;
}
