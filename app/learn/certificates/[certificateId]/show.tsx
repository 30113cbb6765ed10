import { getTranslations } from 'next-intl/server';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import { ShowForm } from './show-form';

/** Shows a certificate to one who asked for it, once. */
export async function Show({ certificateId }: { certificateId: string }) {
  const t = await getTranslations('ownCertificates');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="show">
      <h2 id="show">{t('showTitle')}</h2>
      <p className={ui.prose}>{t('showBody')}</p>
      <ShowForm submit={t('show')} failed={problems('no-answer')} made={t('shown')} label={t('showing')}>
        <input type="hidden" name="certificateId" value={certificateId} />
        <Field
          label={t('audience')}
          rule={t('audienceRule')}
          name="audience"
          required
          maxLength={120}
          autoComplete="off"
        />
        <Field label={t('nonce')} rule={t('nonceRule')} name="nonce" required maxLength={120} autoComplete="off" code />
      </ShowForm>
    </section>
  );
}
