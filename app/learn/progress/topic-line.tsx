import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { againstLine, type TopicProgress } from '@/lib/competency/progress';
import { AbilityBar } from './ability-bar';
import { EvidenceList } from './evidence-list';
import { inLogits, percent } from './numbers';
import styles from './progress.module.css';
import type { LineOfTopic, Reader } from './progress-view';

interface Shown {
  line: LineOfTopic;
  settings: OrganizationSettings;
  by: Reader;
  ofRole: boolean;
}

/** One topic: its bar, what it says, and what it rests on. What was not tested is said in words. */
export function TopicLine({ line, settings, by, ofRole }: Shown) {
  const t = useTranslations('progress');
  const { id, name, shown, cut } = line;
  return (
    <li className={styles.topic} id={id}>
      <h3 className={styles.name}>{name}</h3>
      {shown ? (
        <>
          <Said line={line} shown={shown} settings={settings} />
          <EvidenceList {...{ name, shown, settings, by }} />
        </>
      ) : (
        <p className={styles.untested}>{t(ofRole && cut !== undefined ? 'untestedOfRole' : 'untested')}</p>
      )}
    </li>
  );
}

function Said({
  line: { name, cut },
  shown,
  settings,
}: {
  line: LineOfTopic;
  shown: TopicProgress;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('progress');
  const { mean, low, high, before, responses, cases, meanShare, newestAt } = shown;
  const against = cut === undefined ? undefined : t(againstLine(shown, cut));
  const numbers = { topic: name, mean: inLogits(mean), low: inLogits(low), high: inLogits(high) };
  return (
    <>
      <AbilityBar
        range={shown}
        before={before}
        cut={cut}
        label={against ? t('scaleLabel', { ...numbers, against }) : t('scaleLabelPlain', numbers)}
      />
      <p className={styles.against}>{against ?? t('noLine')}</p>
      {before && (
        <p className={styles.fading}>{t('fading', { low: inLogits(before.low), high: inLogits(before.high) })}</p>
      )}
      <p className={ui.small}>
        {t('rests', { responses, cases, percent: percent(meanShare), date: shownDate(new Date(newestAt), settings) })}
      </p>
    </>
  );
}
