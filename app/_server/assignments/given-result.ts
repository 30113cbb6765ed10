import { getTranslations } from 'next-intl/server';
import type { ActResult } from '@/app/_ui/act-result';
import type { AssignmentField, Wrongs } from './read-assignment-form';

/** A sentence for each field that something is wrong with, or what any act hands back. */
export type GivenResult = ActResult | { wrong: Partial<Record<AssignmentField, string>> };

/** What is wrong, said to whoever typed it. */
export async function wrongSentences(wrong: Wrongs): Promise<Partial<Record<AssignmentField, string>>> {
  const t = await getTranslations('assignments.wrong');
  return Object.fromEntries(Object.entries(wrong).map(([field, code]) => [field, t(code)]));
}
