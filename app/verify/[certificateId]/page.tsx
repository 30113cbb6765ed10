import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { certificateView } from '@/app/_server/certificates/certificate-view';
import { recordRefusal } from '@/app/_server/certificates/check-record';
import { readOnRecord } from '@/app/_server/certificates/read-standing';
import { page } from '@/app/_server/guard';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { CertificateShown } from '../certificate-shown';
import { readShownWords } from '../read-words';

/** Longest thing that is looked up. */
const LONGEST_ID = 80;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('verify');
  return { title: t('title'), robots: { index: false } };
}

/** What is on record of a certificate, for whoever has its address, such as from the code on the paper. */
export default page('/verify/[certificateId]', async (_, { params }: PageProps<'/verify/[certificateId]'>) => {
  const id = (await params).certificateId.slice(0, LONGEST_ID);
  const record = await readOnRecord(id);
  const view = await certificateView(record, record ? await recordRefusal(record, new Date()) : { code: 'not-ours' });
  const t = await getTranslations('verify');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('title')}>
          <CertificateShown view={view} words={await readShownWords()} />
          <p className={ui.small}>{t('fromRecord')}</p>
          <p>
            <Link href="/verify" prefetch={false}>
              {t('checkCopy')}
            </Link>
          </p>
        </section>
      </main>
    </>
  );
});
