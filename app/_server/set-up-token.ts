import { randomBytes, timingSafeEqual } from 'node:crypto';
import { countUsers } from '@/db/queries/users';
import { database } from './database';

/** The console and the pages are bundled apart but run in one process. */
const held = globalThis as { faultwrightSetUpToken?: string | undefined };

/** A token for setting up an installation without people, made once a start; undefined where there are people. */
export async function newSetUpToken(): Promise<string | undefined> {
  if ((await countUsers(database())) > 0) return undefined;
  held.faultwrightSetUpToken ??= randomBytes(16).toString('hex');
  return held.faultwrightSetUpToken;
}

/** Whether somebody has read the console of this very start. */
export function isSetUpToken(typed: string): boolean {
  const expected = Buffer.from(held.faultwrightSetUpToken ?? '');
  const given = Buffer.from(typed);
  return expected.length > 0 && expected.length === given.length && timingSafeEqual(expected, given);
}

/** It has done its work. */
export function forgetSetUpToken(): void {
  held.faultwrightSetUpToken = undefined;
}
