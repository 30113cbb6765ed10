import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import type { Case } from '@/lib/cases/case';
import { harbour, people } from '../support/people';
import { freshData, openPlace, placeFor, root, startServer, untilUp } from '../support/server';

const place = placeFor(3171);
export const origin = `http://127.0.0.1:${place.port}`;

/** Why nothing that needs the site was measured; undefined when it is built. */
export function unbuilt(): string | undefined {
  return existsSync(join(root, '.next/BUILD_ID')) ? undefined : 'needs a production build: npm run build';
}

/** Runs the production server with an empty database of its own, for as long as `run` takes. */
export async function withCaseServer<T>(run: (db: Db) => Promise<T>): Promise<T> {
  await freshData(place);
  const server = startServer(place);
  try {
    await untilUp(place);
    return await run(openPlace(place));
  } finally {
    server.kill('SIGTERM');
    rmSync(place.data, { recursive: true, force: true });
  }
}

/** An open attempt of the learner at a case. */
export async function openAttempt(db: Db, theCase: Case, id: string): Promise<string> {
  const { code, generatorVersion, contentHash } = theCase;
  const row = {
    id,
    learnerId: people.learner.id,
    organizationId: harbour.id,
    key: `start-${id}`,
    caseCode: code,
    generatorVersion,
    contentHash,
  };
  const attempt = await recordAttempt(db, { ...row, demo: false, createdAt: new Date() });
  if (!attempt) throw new Error(`Attempt ${id} was not stored`);
  return attempt.id;
}
