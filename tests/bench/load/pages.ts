import type { Db } from '@/db/client';
import { newSession, people, SESSION_COOKIE } from '../../support/people';
import { quantile } from '../spread';

const ROUNDS = 15;

export interface PageTime {
  page: string;
  /** Milliseconds, median over the rounds. */
  median: number;
}

/** How long the main pages take, one at a time. */
export async function timePages(db: Db, origin: string, attemptId: string): Promise<PageTime[]> {
  const learner = await newSession(db, 'load-learner-0');
  const administrator = await newSession(db, people.administrator.id);
  const pages = [
    { page: '/learn', path: '/learn', cookie: learner },
    { page: '/learn/cases/…', path: `/learn/cases/${attemptId}`, cookie: learner },
    { page: '/people', path: '/people', cookie: administrator },
    { page: '/people/…', path: '/people/load-learner-0', cookie: administrator },
    { page: '/log', path: '/log', cookie: administrator },
  ];
  const times: PageTime[] = [];
  for (const { page, path, cookie } of pages) times.push({ page, median: await medianOf(origin + path, cookie) });
  return times;
}

async function medianOf(url: string, cookie: string): Promise<number> {
  const times = [];
  for (let round = -2; round < ROUNDS; round++) {
    const start = performance.now();
    const answer = await fetch(url, { headers: { Cookie: `${SESSION_COOKIE}=${cookie}` } });
    await answer.text();
    if (!answer.ok) throw new Error(`${url} answered ${answer.status}`);
    // The first ones warm the page up.
    if (round >= 0) times.push(performance.now() - start);
  }
  return quantile(times, 0.5);
}
