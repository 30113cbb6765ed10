import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import assignments from '@/app/assignments/assignments.module.css';
import { FieldGroup, WrongField } from '@/app/assignments/form-fields';
import type { Scheme } from '@/lib/readiness/scheme';
import { topicsInOrder } from '@/lib/topics/topic';

/** Which topics, in which shares, with how many responses at least. A topic without either is not asked for. */
export function BlueprintFields({ scheme: { blueprint } }: { scheme: Scheme }) {
  const t = useTranslations('schemes.form');
  return (
    <FieldGroup legend={t('blueprint')} rule={t('blueprintRule')} name="blueprint">
      {topicsInOrder(catalogue()).map(({ id, text }) => {
        const row = blueprint.find(({ topic }) => topic === id);
        return (
          <div key={id} className={assignments.pair}>
            <WrongField
              label={t('shareOf', { topic: text.en.name })}
              name={`share.${id}`}
              inputMode="numeric"
              defaultValue={Math.round(100 * (row?.share ?? 0))}
            />
            <WrongField
              label={t('atLeastOf', { topic: text.en.name })}
              name={`atLeast.${id}`}
              inputMode="numeric"
              defaultValue={row?.atLeast ?? 0}
            />
          </div>
        );
      })}
    </FieldGroup>
  );
}
