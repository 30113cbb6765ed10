import { gzipSync } from 'node:zlib';
import type { Db } from '@/db/client';
import { newSession, people, SESSION_COOKIE } from '../support/people';
import { aCase } from '../support/worked-attempt';
import { openAttempt, origin } from './case-server';

export interface FirstLoadFigures {
  /** Gzipped kilobytes (1000 bytes) of script that a modern browser loads with the page. */
  casePageKb: number;
  /** The same for the page that says that an address does not exist. */
  notFoundPageKb: number;
}

export async function measureFirstLoad(db: Db): Promise<FirstLoadFigures> {
  const attempt = await openAttempt(db, aCase(), 'first-load');
  const headers = { Cookie: `${SESSION_COOKIE}=${await newSession(db, people.learner.id)}` };
  return {
    casePageKb: await scriptKilobytes(`/learn/cases/${attempt}`, 200, headers),
    notFoundPageKb: await scriptKilobytes('/no-such-page', 404, headers),
  };
}

/** The polyfill that only browsers without modules load is left out. */
async function scriptKilobytes(path: string, status: number, headers: HeadersInit): Promise<number> {
  const page = await fetch(origin + path, { headers });
  if (page.status !== status) throw new Error(`${path} answered ${page.status}`);
  const tags = (await page.text()).match(/<script\b[^>]*\bsrc="[^"]+"[^>]*>/g) ?? [];
  const sources = tags.filter((tag) => !/\bnomodule\b/i.test(tag)).map((tag) => /\bsrc="([^"]+)"/.exec(tag)?.[1] ?? '');
  const sizes = await Promise.all([...new Set(sources)].map(gzippedBytes));
  return sizes.reduce((sum, size) => sum + size, 0) / 1e3;
}

async function gzippedBytes(source: string): Promise<number> {
  const script = await fetch(origin + source.replaceAll('&amp;', '&'));
  if (!script.ok) throw new Error(`${source} answered ${script.status}`);
  return gzipSync(Buffer.from(await script.arrayBuffer())).length;
}
