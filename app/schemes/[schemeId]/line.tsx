import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { Scheme } from '@/lib/readiness/scheme';
import { logits } from '../logits';

/** Where the line is, how it was set and how sure one has to be. */
export function Line({ scheme, settings }: { scheme: Scheme; settings: OrganizationSettings }) {
  const t = useTranslations('schemes');
  const { cut, confidence, refuse } = scheme;
  const { ability, standardError, setBy } = cut;
  const percent = (share: number) => Math.round(100 * share);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="line">
      <h2 id="line">{t('lineTitle')}</h2>
      <p className={ui.lead}>
        {standardError === null
          ? t('cut', { cut: logits(ability) })
          : t('cutWithError', { cut: logits(ability), error: standardError.toFixed(2) })}
      </p>
      <p className={ui.small}>{t('scaleIs')}</p>
      <p>
        {setBy.kind === 'panel'
          ? t('setByPanel', { judges: setBy.judges, at: shownDate(new Date(setBy.at), settings) })
          : t('setAssumed', { because: setBy.because })}
      </p>
      <p>{t('howSure', { confidence: percent(confidence), refuse: percent(refuse) })}</p>
      <p>{t('threeOutcomes')}</p>
    </section>
  );
}
