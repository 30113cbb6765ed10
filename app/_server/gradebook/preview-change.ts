import { setImmediate } from 'node:timers/promises';
import { getTranslations } from 'next-intl/server';
import { listHandedIn } from '@/db/queries/regrades';
import { listChanges } from '@/db/queries/turn-work';
import type { assignments } from '@/db/schema';
import type { Change } from '@/lib/regrading/change';
import { type Move, type Moves, movesOf } from '@/lib/regrading/moves';
import { database } from '../database';
import { isNamed } from '../review/who';
import { settleTurns } from './settle-turns';
import { turnResult } from './turn-result';

export interface NamedMoves extends Moves {
  moved: readonly (Move & { name: string })[];
}

/**
 * Who a change of marks would move and how; nothing is changed. Where marks are given without names, nobody is named.
 *
 * @returns undefined while nobody has handed anything in.
 */
export async function previewChange(
  assignment: typeof assignments.$inferSelect,
  change: Change,
): Promise<NamedMoves | undefined> {
  const db = database();
  const { id, organizationId } = assignment;
  await settleTurns(organizationId, id);
  const turns = await listHandedIn(db, id);
  if (turns.length === 0) return undefined;
  const changes = [...(await listChanges(db, id)).map((one) => one.change), change];
  const all: Move[] = [];
  for (const { turnId, learnerId, total } of turns) {
    const after = await turnResult(db, turnId, changes);
    all.push({ turnId, learnerId, before: total ?? 0, after: after?.total ?? 0 });
    await setImmediate();
  }
  const t = await getTranslations('marks');
  const nameless = !(await isNamed(assignment, new Date()));
  const names = new Map(turns.map(({ turnId, name }) => [turnId, name]));
  const moves = movesOf(all);
  return {
    ...moves,
    moved: moves.moved.map((move, index) => ({
      ...move,
      name: nameless ? t('nameless', { number: index + 1 }) : (names.get(move.turnId) ?? t('erased')),
    })),
  };
}
