import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import { startRandomCase } from './actions';

/** The button that starts a case nobody has seen. */
export function StartRandom({ label }: { label: string }) {
  const t = useTranslations('problems');
  return (
    <ActForm action={startRandomCase} submit={label} failed={t('start-failed')}>
      {null}
    </ActForm>
  );
}
