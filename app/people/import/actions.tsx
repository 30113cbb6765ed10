'use server';

import { revalidatePath } from 'next/cache';
import { getTranslations } from 'next-intl/server';
import { action } from '@/app/_server/guard';
import { addImported } from '@/app/_server/people/add-imported';
import { readImport } from '@/app/_server/people/read-import';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ImportAnswer } from './import-answer';
import { ImportedPeople } from './imported-people';
import { Preview } from './preview';

/** Shows what would come of a list. Nothing is stored. */
export const previewImport = action('previewImport', async (permit, form): Promise<ImportAnswer> => {
  const csv = form instanceof FormData ? form.get('csv') : undefined;
  if (typeof csv !== 'string' || csv.trim() === '') return { error: await problemWithFields(['csv']) };
  const rows = await readImport(permit, csv);
  if ('error' in rows) return { error: await problem(rows.error, rows) };
  const good = rows.filter(({ faults }) => faults.length === 0).length;
  const t = await getTranslations('people');
  return { good, submit: good > 0 ? t('importNow', { count: good }) : null, shown: <Preview rows={rows} /> };
});

/** Adds the people of a list whose rows are right, all at once, as long as the list comes to what the preview showed. */
export const importPeople = action('importPeople', async (permit, form): Promise<ImportAnswer> => {
  const csv = form instanceof FormData ? form.get('csv') : undefined;
  const seen = form instanceof FormData ? Number(form.get('good')) : 0;
  if (typeof csv !== 'string' || csv.trim() === '') return { error: await problemWithFields(['csv']) };
  const rows = await readImport(permit, csv);
  if ('error' in rows) return { error: await problem(rows.error, rows) };
  const good = rows.filter(({ faults }) => faults.length === 0);
  const imported = good.length === seen && seen > 0 ? await addImported(permit, good) : undefined;
  if (!imported) return { error: await problem('import-changed') };
  revalidatePath('/people');
  return { good: 0, submit: null, shown: <ImportedPeople people={imported} /> };
});
