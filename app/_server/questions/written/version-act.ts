import { z } from 'zod';
import type { VersionAct } from '@/db/queries/written-questions';
import type { SignedInPermit } from '../../permit';

const named = z.object({ questionId: z.string().min(1).max(80), versionId: z.string().min(1).max(80) });

/** Which version of the door's question a form is about, and who does it now; undefined where the form names none. */
export function versionActFrom({ session }: SignedInPermit, form: unknown): VersionAct | undefined {
  const parsed = named.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  return parsed.success ? { ...parsed.data, personId: session.actor.personId, at: new Date() } : undefined;
}
