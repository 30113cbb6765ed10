import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { toString as qrCode } from 'qrcode';
import { certificateAddress } from '@/app/_server/certificates/addresses';
import { certificateView } from '@/app/_server/certificates/certificate-view';
import { recordRefusal } from '@/app/_server/certificates/check-record';
import { readOnRecord } from '@/app/_server/certificates/read-standing';
import { page } from '@/app/_server/guard';
import { ActForm } from '@/app/_ui/act-form';
import { SiteHeader } from '@/app/_ui/site-header';
import { ToCopy } from '@/app/_ui/to-copy';
import ui from '@/app/_ui/ui.module.css';
import styles from '@/app/certificates/certificates.module.css';
import { CertificateShown } from '@/app/verify/certificate-shown';
import { readShownWords } from '@/app/verify/read-words';
import type { Consent } from '@/lib/certificates/consent';
import { setConsent } from './actions';
import { Show } from './show';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('ownCertificates');
  return { title: t('one') };
}

/** One's own certificate: how it stands, what of it may be shown, and ways to hand it on. */
export default page(
  '/learn/certificates/[certificateId]',
  async (_, { params }: PageProps<'/learn/certificates/[certificateId]'>) => {
    const { certificateId } = await params;
    const record = await readOnRecord(certificateId);
    if (!record) notFound();
    const view = await certificateView(record, await recordRefusal(record, new Date()));
    const t = await getTranslations('ownCertificates');
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{record.row.scheme.text.en.name}</h1>
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="seen">
            <h2 id="seen">{t('seenTitle')}</h2>
            <p className={ui.small}>{t('seenBody')}</p>
            <CertificateShown view={view} words={await readShownWords()} />
          </section>
          <Consents certificateId={certificateId} consent={record.row.consent} />
          <HandOn certificateId={certificateId} />
          <Show certificateId={certificateId} />
        </main>
      </>
    );
  },
);

async function Consents({ certificateId, consent }: { certificateId: string; consent: Consent }) {
  const t = await getTranslations('ownCertificates');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="consent">
      <h2 id="consent">{t('consentTitle')}</h2>
      <p className={ui.prose}>{t('consentBody')}</p>
      <ActForm
        className={ui.stack}
        action={setConsent}
        submit={t('store')}
        failed={problems('no-answer')}
        done={t('stored')}
      >
        <input type="hidden" name="certificateId" value={certificateId} />
        <label className={styles.tick}>
          <input type="checkbox" name="name" defaultChecked={consent.name} />
          <span>{t('consentName')}</span>
        </label>
        <label className={styles.tick}>
          <input type="checkbox" name="results" defaultChecked={consent.results} />
          <span>{t('consentResults')}</span>
        </label>
      </ActForm>
    </section>
  );
}

async function HandOn({ certificateId }: { certificateId: string }) {
  const t = await getTranslations('ownCertificates');
  const address = certificateAddress(certificateId);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="hand-on">
      <h2 id="hand-on">{t('handOnTitle')}</h2>
      <p className={ui.prose}>{t('handOnBody')}</p>
      <div
        className={styles.qr}
        role="img"
        aria-label={t('qr')}
        // biome-ignore lint/security/noDangerouslySetInnerHtml: made here, of an address of our own
        dangerouslySetInnerHTML={{ __html: await qrCode(address, { type: 'svg', margin: 0 }) }}
      />
      <ToCopy text={address} label={t('address')} />
      <p className={styles.ways}>
        <a href={`/learn/certificates/${certificateId}/pdf`}>{t('pdf')}</a>
        <a href={`/learn/certificates/${certificateId}/signed`}>{t('signed')}</a>
      </p>
      <p className={ui.small}>{t('pdfBody')}</p>
    </section>
  );
}
