import { useTranslations } from 'next-intl';
import type { DangerView, DebriefView } from '@/app/_server/debrief-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import ui from '@/app/_ui/ui.module.css';
import { jetWords } from '../harm';

/** What would have hurt somebody. Comes before everything else. */
export function SafetyEvents({ view: { dangers }, units }: { view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  if (dangers.length === 0) return null;
  return (
    <section className={`${ui.alert} ${ui.stack}`} aria-labelledby="safety-first">
      <h2 id="safety-first">{t('safetyTitle')}</h2>
      {dangers.map((danger) => (
        <Danger key={danger.event.seq} danger={danger} units={units} />
      ))}
    </section>
  );
}

function Danger({ danger: { event, reading, mistakes }, units }: { danger: DangerView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const jet = reading?.items.map(({ shown }) => shown).find((shown) => shown.kind === 'jet');
  return (
    <>
      <p>
        {t(`safety.${event.code}`, {
          instrument: reading?.instrument.name ?? '',
          check: reading?.check.name ?? '',
          condition: reading ? run(reading.condition) : '',
          ...jetWords(jet ?? { pressure: 0, speed: 0 }, units),
        })}
      </p>
      {mistakes.map((text) => (
        <p key={text}>{t('mistake', { text })}</p>
      ))}
    </>
  );
}
