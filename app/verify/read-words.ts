import { getTranslations } from 'next-intl/server';
import type { ShownWords } from './certificate-shown';

/** Words around a certificate that is shown. */
export async function readShownWords(): Promise<ShownWords> {
  const t = await getTranslations('verify');
  return {
    results: t('results'),
    topic: t('topic'),
    value: t('value'),
    cut: t('cut'),
    invented: t('invented'),
  };
}
