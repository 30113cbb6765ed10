import { headers } from 'next/headers';
import { z } from 'zod';
import { auth } from '../auth';
import { type ProblemCode, problem, problemWithFields } from '../problems';
import type { Session } from '../session';
import { type Entry, enterAsNew, enterAsSelf } from './enter';
import { newcomerFrom, newcomerSchema } from './newcomer';
import { signInAs } from './sign-in-as';

const schema = z.union([z.object({ as: z.literal('self') }), newcomerSchema]);

/**
 * Lets in whoever sent a form: as the one they are signed in as, where it says so, or as somebody new. They work in that
 * organisation from now on.
 *
 * @returns undefined when they are in.
 */
export async function letIn(
  session: Session | null,
  form: unknown,
  entry: Entry,
  slug: string,
): Promise<{ error: string } | undefined> {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(lacking(form)) };
  if ('as' in parsed.data) {
    if (!session) return { error: await problem('signed-out') };
    const entered = await enterAsSelf(session.actor.personId, entry);
    if ('error' in entered) return refused(entered.error);
  } else {
    const read = newcomerFrom(parsed.data, slug);
    if ('error' in read) return refused(read.error);
    const entered = await enterAsNew(read.newcomer, entry);
    if ('error' in entered) return refused(entered.error);
    await signInAs(read.newcomer.address, read.newcomer.secret);
    return undefined;
  }
  await workIn(entry.organizationId);
  return undefined;
}

/** Makes an organisation the one that the session works in. */
export async function workIn(organizationId: string): Promise<void> {
  await auth().api.setActiveOrganization({ body: { organizationId }, headers: await headers() });
}

function lacking(form: unknown): string[] {
  const fields = form instanceof FormData ? form : new FormData();
  return Object.keys(newcomerSchema.shape).filter(
    (name) => !newcomerSchema.shape[name as Field].safeParse(fields.get(name)).success,
  );
}

type Field = keyof typeof newcomerSchema.shape;

async function refused(code: ProblemCode) {
  return { error: await problem(code) };
}
