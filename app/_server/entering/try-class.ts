import { headers } from 'next/headers';
import { ADDRESS_HEADER } from '../http/address-header';
import { countTry, forgetTries } from '../slow-down';
import { type OpenClass, readClass } from './read-class';

/** The class that a typed code stands for. Codes are tried by address, and slower each time that there is none. */
export async function tryClass(typed: string): Promise<OpenClass | { minutes: number } | 'none'> {
  const tried = `links:${(await headers()).get(ADDRESS_HEADER) ?? ''}` as const;
  const minutes = await countTry(tried);
  if (minutes !== undefined) return { minutes };
  const found = await readClass(typed);
  if (!found) return 'none';
  await forgetTries(tried);
  return found;
}
