import { useTranslations } from 'next-intl';
import type { CaseFace, ReadingItem, ReadingView } from '@/app/_server/attempt-view';
import { isReadByEye } from '@/app/_server/decide-finding';
import { ActForm } from '@/app/_ui/act-form';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { unitRead, unitsToEnter } from '@/app/_ui/gauges/unit-read';
import { limitWords } from '@/app/_ui/limit-words';
import ui from '@/app/_ui/ui.module.css';
import { VerdictShape } from '@/app/_ui/verdict-mark';
import { type Area, areas } from '@/lib/areas';
import { comparisons, verdicts } from '@/lib/checks/verdict';
import type { Unit } from '@/lib/units';
import { writeFinding } from './actions';
import styles from './case.module.css';
import { MOST_WORDS, NO_LIMIT } from './parse-forms';
import { isRecording, isWide } from './reading-kind';

/** What it reads, the verdict, and why. */
export function FindingForm({
  attemptId,
  face,
  reading,
  item,
  units,
  picture,
}: {
  attemptId: string;
  face: CaseFace;
  reading: ReadingView;
  item: ReadingItem;
  units: UnitChoice;
  /** The instrument, which stands beside the answer. */
  picture: React.ReactNode;
}) {
  const t = useTranslations('finding');
  const bench = useTranslations('bench');
  return (
    <ActForm
      className={`${styles.bench} ${styles.benchForm} ${isWide(item) ? styles.wide : ''}`}
      action={writeFinding}
      submit={t('write')}
      failed={t('failed')}
    >
      <input type="hidden" name="attemptId" value={attemptId} />
      <input type="hidden" name="reading" value={reading.seq} />
      <input type="hidden" name="quantity" value={item.quantity} />
      {picture}
      <div className={styles.answer}>
        {item.shown.kind === 'off-scale' && (
          <p className={ui.notice}>
            {bench(isRecording(item) ? 'offScaleTrace' : 'offScale', { end: item.shown.end })}
          </p>
        )}
        {item.gauge && isReadByEye(item.gauge, item.shown) && (
          <ScaleReading unit={unitRead(item.gauge, reading.lines, units)} />
        )}
        <VerdictChoice />
        <Reason face={face} units={units} graded={item.grades !== undefined} />
      </div>
      <AreaChoice name="clears" label={t('clears')} className={styles.clear} />
      <AreaChoice name="suspects" label={t('suspects')} className={styles.keep} />
      <label className={ui.field}>
        <span>
          {t('words')} {t('optional')}
        </span>
        <textarea name="words" rows={2} maxLength={MOST_WORDS} />
      </label>
    </ActForm>
  );
}

function ScaleReading({ unit }: { unit: Unit }) {
  const t = useTranslations('finding');
  const fitting = unitsToEnter(unit);
  return (
    <div className={styles.reads}>
      <label className={ui.field}>
        <span>{t('reads')}</span>
        <input name="value" inputMode="decimal" autoComplete="off" required />
      </label>
      {fitting.length > 1 ? (
        <label className={ui.field}>
          <span>{t('readsUnit')}</span>
          <select name="unit" defaultValue={unit}>
            {fitting.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <p className={ui.field}>
          <span>{t('readsUnit')}</span>
          <b className={styles.onlyUnit}>{unit}</b>
          <input type="hidden" name="unit" value={unit} />
        </p>
      )}
    </div>
  );
}

function VerdictChoice() {
  const t = useTranslations('verdicts');
  const say = useTranslations('finding');
  return (
    <fieldset>
      <legend className={ui.label}>{say('verdict')}</legend>
      <div className={styles.verdicts}>
        {verdicts.map((verdict) => (
          <label key={verdict} className={styles.option}>
            <input type="radio" name="verdict" value={verdict} required />
            <VerdictShape verdict={verdict} />
            {t(verdict)}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** How the reading stands to a line of the whole limit sheet: finding the right line is part of the work. */
function Reason({ face, units, graded }: { face: CaseFace; units: UnitChoice; graded: boolean }) {
  const t = useTranslations('finding');
  const compare = useTranslations('comparisons');
  const say = useTranslations('limits');
  const run = useTranslations('conditionsShort');
  return (
    <div className={styles.reason}>
      <label className={ui.field}>
        <span>{t('because')}</span>
        <select name="comparison" required defaultValue="">
          <option value="" disabled>
            {t('pickComparison')}
          </option>
          {comparisons.map((comparison) => (
            <option key={comparison} value={comparison}>
              {compare(graded ? `grade.${comparison}` : comparison)}
            </option>
          ))}
        </select>
      </label>
      <label className={ui.field}>
        <span>{t('limit')}</span>
        <select name="limit" required defaultValue="">
          <option value="" disabled>
            {t('pickLimit')}
          </option>
          {face.choices.limits.map(({ check, lines }) => (
            <optgroup key={check} label={check}>
              {lines.map(({ line, quantity, facts }) => {
                const limit = limitWords(say, line, units, facts);
                const condition = run(line.condition);
                return (
                  <option key={line.id} value={line.id}>
                    {quantity ? say('lineOf', { condition, quantity, limit }) : say('line', { condition, limit })}
                  </option>
                );
              })}
            </optgroup>
          ))}
          <option value={NO_LIMIT}>{t('noLimit')}</option>
        </select>
      </label>
    </div>
  );
}

function AreaChoice({
  name,
  label,
  className,
}: {
  name: 'clears' | 'suspects';
  label: string;
  className: string | undefined;
}) {
  const t = useTranslations('areas');
  return (
    <fieldset>
      <legend className={ui.label}>{label}</legend>
      <div className={styles.areas}>
        {areas.map((area: Area) => (
          <label key={area} className={`${styles.area} ${className}`}>
            <input type="checkbox" name={name} value={area} />
            <span>{t(area)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
