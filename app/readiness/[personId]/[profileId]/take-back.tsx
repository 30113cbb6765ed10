import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';

/** Takes something back that was written down, with a reason. Folded up until somebody wants to. */
export async function TakeBack({
  action,
  name,
  value,
}: {
  action: (form: FormData) => Promise<ActResult>;
  name: string;
  value: string;
}) {
  const t = await getTranslations('readiness.report');
  const problems = await getTranslations('problems');
  return (
    <details>
      <summary>{t('takeBack')}</summary>
      <ActForm className={ui.stack} action={action} submit={t('takeBack')} failed={problems('no-answer')} quiet>
        <input type="hidden" name={name} value={value} />
        <Field label={t('reason')} name="reason" maxLength={500} required />
      </ActForm>
    </details>
  );
}
