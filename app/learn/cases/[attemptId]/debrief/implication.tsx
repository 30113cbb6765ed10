import { useTranslations } from 'next-intl';
import type { FindingGrade, NamedArea } from '@/lib/grading/grade';
import { percentOf } from './belief-table';
import styles from './debrief.module.css';

/** What was cleared and suspected, rightly or not, with how the reading moved each area. */
export function Implication({ grade: { clears, suspects, missed } }: { grade: FindingGrade }) {
  const t = useTranslations('debrief');
  const area = useTranslations('areas');
  if (clears.length + suspects.length + (missed?.length ?? 0) === 0) return <p>{t('namedNone')}</p>;
  return (
    <>
      <Named label={t('clearsRight')} areas={clears.filter(({ right }) => right)} />
      <Named label={t('clearsWrong')} areas={clears.filter(({ right }) => !right)} />
      <Named label={t('suspectsRight')} areas={suspects.filter(({ right }) => right)} />
      <Named label={t('suspectsWrong')} areas={suspects.filter(({ right }) => !right)} />
      {missed && missed.length > 0 && <p>{t('missed', { areas: missed.map((id) => area(id)).join(', ') })}</p>}
    </>
  );
}

/** Areas, each with its share before and after where the grade has them. */
function Named({ label, areas }: { label: string; areas: readonly NamedArea[] }) {
  const t = useTranslations('debrief');
  const name = useTranslations('areas');
  if (areas.length === 0) return null;
  return (
    <p>
      {label}{' '}
      {areas.map(({ area, before, after }, index) => (
        <span key={area} className={styles.named}>
          {index > 0 && ', '}
          {name(area)}
          {before !== undefined && after !== undefined && (
            <span className={styles.share}>
              {` ${t('share', { before: percentOf(before), after: percentOf(after) })}`}
            </span>
          )}
        </span>
      ))}
      .
    </p>
  );
}
