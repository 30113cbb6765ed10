import { createHmac } from 'node:crypto';
import { secret } from '../secret';

/**
 * What names somebody on a live page. It tells nobody who that is: not of an anonymous assignment, nor to another
 * installation.
 */
export function liveKey(assignmentId: string, personId: string): string {
  return createHmac('sha256', secret()).update(`live ${assignmentId} ${personId}`).digest('hex').slice(0, 16);
}
