import { createHmac } from 'node:crypto';
import type { TaskChoice } from '@/lib/competency/pool';
import { randomStream } from '@/lib/random';
import { secret } from '../secret';

/** Draws the tasks of a new-hire check, together with the names of its streams: nobody else can draw the same. */
export function intakeSeed(intakeId: string): string {
  return createHmac('sha256', secret()).update(`intake ${intakeId}`).digest('hex').slice(0, 20);
}

/** The stream of a place. */
export function streamAt(place: number): string {
  return `intake place ${place}`;
}

/** Which of the contenders the stored stream draws, now as then; undefined where none was at the front. */
export function drawnAgain(intakeId: string, { contenders, stream }: TaskChoice): string | undefined {
  if (contenders.length === 0) return undefined;
  return randomStream(intakeSeed(intakeId), stream).pick(contenders).poolTaskId;
}
