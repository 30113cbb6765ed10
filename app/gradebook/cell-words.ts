import { getTranslations } from 'next-intl/server';
import { type CellState, cellStates } from '@/lib/gradebook/book';
import type { CellWords } from './book-cell';

/** What a cell says, in words. */
export async function cellWords(): Promise<CellWords> {
  const t = await getTranslations('gradebook');
  const states = cellStates.map((state) => [state, t(`states.${state}`)]);
  return { late: t('late'), states: Object.fromEntries(states) as Record<CellState, string> };
}
