import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import type { Scheme } from '@/lib/readiness/scheme';

/** What else holds: window, validity, trying again, appealing, who decides. */
export function SchemeRules({ scheme }: { scheme: Scheme }) {
  const t = useTranslations('schemes.rules');
  const { windowDays, validMonths, retake, appeal, text } = scheme;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="rules">
      <h2 id="rules">{t('title')}</h2>
      <h3>{t('window')}</h3>
      <p>{t('windowIs', { days: windowDays })}</p>
      <h3>{t('validity')}</h3>
      <p>{t('validityIs', { months: validMonths })}</p>
      <p>{text.en.recertification}</p>
      <h3>{t('retake')}</h3>
      <p>{t('retakeIs', { days: retake.waitDays.join(', '), perYear: retake.perYear })}</p>
      <h3>{t('appeal')}</h3>
      <p>{t('appealIs', { within: appeal.withinDays, answered: appeal.answeredInDays })}</p>
      <p>{text.en.appeals}</p>
      <h3>{t('conflicts')}</h3>
      <p>{text.en.conflicts}</p>
      <h3>{t('records')}</h3>
      <p>{text.en.records}</p>
    </section>
  );
}
