import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import { catalogue } from '@/app/_server/catalogue';
import { limitFacts } from '@/app/_server/limit-facts';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { limitWords } from '@/app/_ui/limit-words';
import type { Area } from '@/lib/areas';
import type { FindingGrade } from '@/lib/grading/grade';
import type { LimitLine, Rig } from '@/lib/rig/rig';
import styles from './debrief.module.css';

/** Why a finding was right or wrong, in sentences. */
export function WhatFollows({
  item,
  grade,
  rig,
  units,
}: {
  item: ReadingItem;
  grade: FindingGrade;
  rig: Rig | undefined;
  units: UnitChoice;
}) {
  const t = useTranslations('debrief');
  const verdict = useTranslations('verdicts');
  const comparison = useTranslations('comparisons');
  const lineWords = useLineWords(rig, units);
  const { finding } = item;
  if (!finding) return null;
  const compared = item.grades ? (`grade.${finding.comparison}` as const) : finding.comparison;
  const why = grade.limit === null ? 'no-line' : grade.expectedVerdict;
  return (
    <div className={styles.follows}>
      <p>
        <strong>
          {t(`verdict.${grade.verdictRight ? 'right' : 'wrong'}`, { verdict: verdict(grade.expectedVerdict) })}
        </strong>{' '}
        {grade.limit !== null && t('limitIs', { limit: lineWords(grade.limit) })} {t(`why.${why}`)}
      </p>
      {!grade.limitRight && (
        <p>{finding.limit === null ? t('limitNone') : t('limitWrong', { limit: lineWords(finding.limit) })}</p>
      )}
      {!grade.comparisonRight && <p>{t('comparisonWrong', { comparison: comparison(compared) })}</p>}
      {grade.dialRight === false && <p>{t('dialWrong')}</p>}
      <Areas label={t('clearsRight')} areas={grade.clears.filter(({ right }) => right)} />
      <Areas label={t('clearsWrong')} areas={grade.clears.filter(({ right }) => !right)} />
      <Areas label={t('suspectsRight')} areas={grade.suspects.filter(({ right }) => right)} />
      <Areas label={t('suspectsWrong')} areas={grade.suspects.filter(({ right }) => !right)} />
      {finding.words !== '' && <p className={styles.words}>{finding.words}</p>}
    </div>
  );
}

function Areas({ label, areas }: { label: string; areas: readonly { area: Area }[] }) {
  const t = useTranslations('areas');
  if (areas.length === 0) return null;
  return <p>{`${label} ${areas.map(({ area }) => t(area)).join(', ')}.`}</p>;
}

/** A line of the limit sheet by its id; the id itself where the sheet no longer has it. */
function useLineWords(rig: Rig | undefined, units: UnitChoice): (id: string) => string {
  const say = useTranslations('limits');
  const run = useTranslations('conditionsShort');
  return (id) => {
    const line: LimitLine | undefined = rig?.limits.find((candidate) => candidate.id === id);
    if (!line) return id;
    return say('line', {
      condition: run(line.condition),
      limit: limitWords(say, line, units, limitFacts(catalogue(), line)),
    });
  };
}
