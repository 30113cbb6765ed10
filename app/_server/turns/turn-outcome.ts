import { findKeptResult, keepingResult, type TurnResultRow } from '@/db/queries/turn-results';
import type { Turn } from '@/db/queries/turns';
import { together } from '@/db/together';
import { database } from '../database';
import { turnResult } from '../gradebook/turn-result';

/** What a turn that was handed in came to, worked out and kept where it was not. Whether it may be told is for others to ask. */
export async function turnOutcome({ id, handedInAt }: Turn): Promise<TurnResultRow | undefined> {
  if (!handedInAt) return undefined;
  const db = database();
  const kept = await findKeptResult(db, id);
  if (kept) return kept;
  const result = await turnResult(db, id);
  if (result) await together(db, [keepingResult(db, result)]);
  return result;
}
