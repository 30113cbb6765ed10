import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import { startDrill } from './actions';

/** The button that starts a drill on one topic. */
export function StartDrill({ topic, label }: { topic: string; label: string }) {
  const t = useTranslations('problems');
  return (
    <ActForm action={startDrill} submit={label} failed={t('start-failed')} quiet>
      <input type="hidden" name="topic" value={topic} />
    </ActForm>
  );
}
