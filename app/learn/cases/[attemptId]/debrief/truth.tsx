import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';

/** What was really wrong, and what mends it. */
export function Truth({ view: { truth, grade } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="truth">
      <h2 id="truth">{t('truth')}</h2>
      <p>
        <strong>{truth.name}.</strong> {truth.how}
      </p>
      {grade.truth.severity > 0 && <p>{t('severity', { percent: Math.round(grade.truth.severity * 100) })}</p>}
      <p>{t('rightRepair', { repairs: truth.repairs.join('; ') })}</p>
    </section>
  );
}
