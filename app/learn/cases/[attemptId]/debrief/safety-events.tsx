import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';

/** What would have hurt somebody. Comes before everything else. */
export function SafetyEvents({ view: { grade, attempt } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  if (grade.safetyEvents.length === 0) return null;
  return (
    <section className={`${ui.alert} ${ui.stack}`} aria-labelledby="safety-first">
      <h2 id="safety-first">{t('safetyTitle')}</h2>
      {grade.safetyEvents.map(({ seq, code }) => {
        const reading = attempt.readings.find((candidate) => candidate.seq === seq);
        const { check, condition, instrument } = reading ?? {};
        return (
          <p key={seq}>
            {t(`safety.${code}`, {
              instrument: instrument?.name ?? '',
              check: check?.name ?? '',
              condition: condition ? run(condition) : '',
            })}
          </p>
        );
      })}
    </section>
  );
}
