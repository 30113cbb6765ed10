import type { ImportAnswer } from './import-answer';

/** An answer to whoever sent a file. */
export function answered(answer: ImportAnswer): Response {
  const status = 'error' in answer ? 400 : 200;
  return Response.json(answer, { status, headers: { 'Cache-Control': 'no-store' } });
}
