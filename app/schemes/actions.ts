'use server';

import { redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { findScheme } from '@/app/_server/schemes';
import { keepScheme } from '@/app/_server/schemes/keep-scheme';
import { readSchemeForm } from '@/app/_server/schemes/read-scheme-form';
import type { ActResult } from '@/app/_ui/act-result';
import { topicsInOrder } from '@/lib/topics/topic';

type SchemeResult = ActResult | { wrong: Readonly<Record<string, string>> };

/** Keeps another version of a scheme and goes to it. Whoever applied before is judged under the version of that day. */
export const changeScheme = action('changeScheme', async (permit, form): Promise<SchemeResult> => {
  const schemeId = form instanceof FormData ? form.get('schemeId') : undefined;
  const base = await findScheme(database(), organizationOf(permit), typeof schemeId === 'string' ? schemeId : '');
  if (!base || !(form instanceof FormData)) return { error: await problem('scheme-moved') };
  if (form.get('basedOn') !== String(base.version)) return { error: await problem('scheme-moved') };
  const topics = topicsInOrder(catalogue()).map(({ id }) => id);
  const read = readSchemeForm(form, base, topics);
  if ('wrong' in read) {
    const t = await getTranslations('schemes.wrong');
    return { wrong: Object.fromEntries(Object.entries(read.wrong).map(([field, code]) => [field, t(code)])) };
  }
  if (!(await keepScheme(permit, read))) return { error: await problem('scheme-moved') };
  redirect(`/schemes/${base.id}`);
});
