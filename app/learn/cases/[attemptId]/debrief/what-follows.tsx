import { useTranslations } from 'next-intl';
import type { ReadingItem } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { limitBounds } from '@/lib/checks/limit';
import { conformanceProbability } from '@/lib/checks/verdict';
import type { FindingGrade } from '@/lib/grading/grade';
import type { Rig } from '@/lib/rig/rig';
import styles from './debrief.module.css';
import { Implication } from './implication';
import { useLineWords } from './line-words';

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
        {grade.limit !== null && t('limitIs', { limit: lineWords(grade.limit) })} {t(`why.${why}`)}{' '}
        <Conforms grade={grade} rig={rig} />
      </p>
      {!grade.limitRight && (
        <p>{finding.limit === null ? t('limitNone') : t('limitWrong', { limit: lineWords(finding.limit) })}</p>
      )}
      {!grade.comparisonRight && <p>{t('comparisonWrong', { comparison: comparison(compared) })}</p>}
      <Dial grade={grade} />
      {grade.settledLater !== undefined && grade.settledLater !== null && (
        <p>{t(grade.settledLater ? 'settledLater' : 'neverSettled')}</p>
      )}
      <Implication grade={grade} />
      {finding.words !== '' && <p className={styles.words}>{finding.words}</p>}
    </div>
  );
}

/** Where an instrument cannot tell: how likely the truth keeps to the limit all the same. */
function Conforms({
  grade: { expectedVerdict, limit, shown, uncertainty },
  rig,
}: {
  grade: FindingGrade;
  rig: Rig | undefined;
}) {
  const t = useTranslations('debrief');
  const line = rig?.limits.find(({ id }) => id === limit);
  if (expectedVerdict !== 'cannot-tell' || !line || shown === null || uncertainty === null) return null;
  const chance = conformanceProbability({ value: shown, uncertainty }, limitBounds(line));
  return t('conforms', { percent: Math.round(100 * chance) });
}

/** How well a dial was read; older grades know only right and wrong. */
function Dial({ grade: { dialRight, dialShare } }: { grade: FindingGrade }) {
  const t = useTranslations('debrief');
  if (dialRight === null) return null;
  if (dialShare === undefined || dialShare === null) return dialRight ? null : <p>{t('dialWrong')}</p>;
  return <p>{t(dialShare >= 1 ? 'dialRight' : dialShare > 0 ? 'dialNear' : 'dialWrong')}</p>;
}
