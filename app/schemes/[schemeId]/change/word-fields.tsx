import { useTranslations } from 'next-intl';
import { FieldGroup, WrongField } from '@/app/assignments/form-fields';
import { type Scheme, schemeWords } from '@/lib/readiness/scheme';
import { WrongArea } from './wrong-area';

/** What a scheme says in sentences. */
export function WordFields({ scheme: { text } }: { scheme: Scheme }) {
  const t = useTranslations('schemes.form');
  return (
    <FieldGroup legend={t('words')}>
      {schemeWords.map((name) =>
        name === 'name' ? (
          <WrongField key={name} label={t('name')} name={name} defaultValue={text.en.name} autoComplete="off" />
        ) : (
          <WrongArea key={name} label={t(name)} name={name} defaultValue={text.en[name]} />
        ),
      )}
    </FieldGroup>
  );
}
