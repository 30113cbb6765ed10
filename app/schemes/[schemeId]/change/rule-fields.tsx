import { useTranslations } from 'next-intl';
import assignments from '@/app/assignments/assignments.module.css';
import { FieldGroup, WrongField } from '@/app/assignments/form-fields';
import type { Scheme } from '@/lib/readiness/scheme';
import { WrongArea } from './wrong-area';

/** The numbers: line, certainty, times. */
export function RuleFields({ scheme }: { scheme: Scheme }) {
  const t = useTranslations('schemes.form');
  const { cut, confidence, refuse, sitting, windowDays, validMonths, retake, appeal, taskAnalysis } = scheme;
  const numbers = {
    confidence: Math.round(100 * confidence),
    refuse: Math.round(100 * refuse),
    minutes: sitting.minutes,
    maximum: sitting.maximum,
    windowDays,
    validMonths,
    perYear: retake.perYear,
    appealWithin: appeal.withinDays,
    appealAnswered: appeal.answeredInDays,
    reviewMonths: taskAnalysis.reviewMonths,
  } as const;
  return (
    <>
      <FieldGroup legend={t('line')}>
        <div className={assignments.pair}>
          <WrongField
            label={t('ability')}
            rule={t('abilityRule')}
            name="ability"
            inputMode="text"
            defaultValue={Number(cut.ability.toFixed(2))}
          />
        </div>
        <WrongArea
          label={t('because')}
          rule={t('becauseRule')}
          name="because"
          rows={2}
          defaultValue={cut.setBy.kind === 'assumed' ? cut.setBy.because : ''}
        />
      </FieldGroup>
      <FieldGroup legend={t('numbers')}>
        <div className={assignments.pair}>
          {(Object.keys(numbers) as (keyof typeof numbers)[]).map((name) => (
            <WrongField key={name} label={t(name)} name={name} inputMode="numeric" defaultValue={numbers[name]} />
          ))}
          <WrongField
            label={t('waitDays')}
            rule={t('waitDaysRule')}
            name="waitDays"
            defaultValue={retake.waitDays.join(', ')}
          />
          <WrongField label={t('analysedOn')} name="analysedOn" type="date" defaultValue={taskAnalysis.on} />
        </div>
      </FieldGroup>
    </>
  );
}
