import { useTranslations } from 'next-intl';
import type { PartView } from '@/app/_server/questions/question-view';
import type { Answer } from '@/lib/questions/answer';
import ui from '../ui.module.css';
import { unitName } from './number-words';
import styles from './question.module.css';
import { SignButton } from './sign-button';
import { InLine } from './words';

type GivenNumbers = Extract<Answer, { form: 'numbers' }>['parts'];

/** Numbers to be worked out, each in its unit. */
export function NumberFields({ parts, given }: { parts: readonly PartView[]; given: GivenNumbers }) {
  return (
    <div className={styles.numbers}>
      {parts.map((part) => (
        <NumberField key={part.id} part={part} given={given[part.id]} />
      ))}
    </div>
  );
}

function NumberField({
  part: { id, said, units },
  given,
}: {
  part: PartView;
  given: GivenNumbers[string] | undefined;
}) {
  const t = useTranslations('questions.numbers');
  return (
    <fieldset>
      <legend className={styles.legend}>
        <InLine said={said} />
      </legend>
      <div className={styles.number}>
        <SignButton label={t('sign')}>
          <input
            className={ui.code}
            name={`value.${id}`}
            aria-label={t('value')}
            inputMode="decimal"
            autoComplete="off"
            required
            maxLength={40}
            defaultValue={given === undefined ? undefined : String(given.value)}
          />
        </SignButton>
        <UnitField id={id} units={units} given={given?.unit} />
      </div>
    </fieldset>
  );
}

function UnitField({
  id,
  units,
  given,
}: Pick<PartView, 'id' | 'units'> & { given: PartView['units'][number] | undefined }) {
  const t = useTranslations('questions.numbers');
  const [only, ...others] = units;
  if (only === undefined) return null;
  if (others.length === 0)
    return (
      <span className={styles.unit}>
        {unitName(only)}
        <input type="hidden" name={`unit.${id}`} value={only} />
      </span>
    );
  return (
    <select name={`unit.${id}`} aria-label={t('unit')} defaultValue={given ?? only}>
      {units.map((unit) => (
        <option key={unit} value={unit}>
          {unitName(unit)}
        </option>
      ))}
    </select>
  );
}
