import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import { Cautions } from '@/app/_ui/cautions';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { showSi } from '@/app/_ui/show-quantity';
import ui from '@/app/_ui/ui.module.css';

/** What came of a reading that could have hurt somebody: a gauge lost, or a jet of fuel. */
export function Harm({
  shown,
  cautions,
  units,
}: {
  shown: ReadingItem['shown'];
  cautions: readonly string[];
  units: UnitChoice;
}) {
  const t = useTranslations('bench');
  const hookUp = useTranslations('hookUp');
  if (shown.kind === 'destroyed')
    return (
      <div className={ui.alert} role="alert">
        <h3>{t('destroyedTitle')}</h3>
        <p>{t('destroyedBody')}</p>
      </div>
    );
  if (shown.kind !== 'jet') return null;
  return (
    <div className={ui.stack}>
      <div className={`${ui.alert} ${ui.stack}`} role="alert">
        <h3>{t('jetTitle')}</h3>
        <p>
          <strong>{t('jetFacts', jetWords(shown, units))}</strong>
        </p>
        <p>{t('jetBody')}</p>
      </div>
      <Cautions title={hookUp('minding')} ids={cautions} />
    </div>
  );
}

/** Pressure and speed of a jet, as sentences name them. */
export function jetWords(
  { pressure, speed }: { pressure: number; speed: number },
  units: UnitChoice,
): { pressure: string; speed: string } {
  return { pressure: showSi(pressure, 'Pa', units), speed: speed.toFixed(0) };
}
