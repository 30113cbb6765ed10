import { createHmac } from 'node:crypto';
import type { PoolUse } from '@/lib/competency/pool';
import { randomId } from '../random-id';
import { secret } from '../secret';

/** A seed for a task of a pool: one of work that counts is drawn with what only this installation knows. */
export function poolSeed(use: PoolUse, id: string): string {
  return use === 'practice'
    ? randomId()
    : createHmac('sha256', secret()).update(`pool ${id}`).digest('hex').slice(0, 20);
}
