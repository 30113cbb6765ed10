import { gzipSync } from 'node:zlib';
import type { Db } from '@/db/client';
import { fillBook } from '../support/book-rows';
import { harbour, newSession, people, SESSION_COOKIE } from '../support/people';
import { origin } from './case-server';
import { type Spread, spreadOf } from './spread';

const ROUNDS = 12;

export interface GradebookFigures {
  /** Milliseconds from the request to the last byte. */
  page: Spread;
  /** Kilobytes (1000 bytes) of the page, gzipped as a proxy would send it, and as it is. */
  gzipKb: number;
  kb: number;
}

/** The gradebook of 500 people × 60 assignments as an instructor's browser gets it. */
export async function measureGradebook(db: Db): Promise<GradebookFigures> {
  await fillBook(db, {
    organizationId: harbour.id,
    createdBy: people.instructor.id,
    learners: 500,
    assignments: 60,
  });
  const headers = { Cookie: `${SESSION_COOKIE}=${await newSession(db, people.instructor.id)}` };
  const times: number[] = [];
  let page = '';
  for (let round = 0; round < ROUNDS; round++) {
    const started = performance.now();
    const answer = await fetch(`${origin}/gradebook`, { headers });
    page = await answer.text();
    if (!answer.ok) throw new Error(`The gradebook answered ${answer.status}`);
    times.push(performance.now() - started);
  }
  return { page: spreadOf(times.slice(2)), gzipKb: gzipSync(page).length / 1e3, kb: page.length / 1e3 };
}
