import { useTranslations } from 'next-intl';
import type { Who } from '@/app/_server/review/who';

/** What somebody is called here: their name, or the handle that stands for it. */
export function useWhoWords(): (who: Who) => string {
  const t = useTranslations('review');
  return (who) => ('handle' in who ? t('handle', { handle: who.handle }) : (who.name ?? t('erased')));
}

export function WhoWords({ who }: { who: Who }) {
  return useWhoWords()(who);
}
