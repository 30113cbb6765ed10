'use server';

import { redirect } from 'next/navigation';
import { letIn } from '@/app/_server/entering/let-in';
import { entryByClass } from '@/app/_server/entering/read-class';
import { tryClass } from '@/app/_server/entering/try-class';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';

/** Joins the class that a code stands for. */
export const joinClass = action('joinClass', async ({ session }, form): Promise<ActResult> => {
  const code = form instanceof FormData ? form.get('code') : undefined;
  const found = typeof code === 'string' ? await tryClass(code) : 'none';
  if (found === 'none') return { error: await problem('join-code') };
  if ('minutes' in found) return { error: await problem('tries-wait', { minutes: found.minutes }) };
  const problems = await letIn(session, form, entryByClass(found), found.organization.slug);
  if (problems) return problems;
  redirect('/learn');
});
