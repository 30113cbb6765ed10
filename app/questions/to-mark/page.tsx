import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { markingOf } from '@/app/_server/review/marking-of';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countWaitingTexts, findFreeText, findOldestWaiting } from '@/db/queries/manual-marks';
import styles from '../questions.module.css';
import { FreeTextPanel } from './free-text-panel';
import { MarkedLast } from './marked-last';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('written.marking');
  return { title: t('title') };
}

/** Free text that waits for a person, the oldest first, or one answer to be marked again. */
export default page('/questions/to-mark', async (permit, { searchParams }: PageProps<'/questions/to-mark'>) => {
  const { sitting, place, names, kept } = await searchParams;
  const organizationId = organizationOf(permit);
  const { personId } = permit.session.actor;
  const named =
    typeof sitting === 'string' && typeof place === 'string' && /^\d{1,6}$/.test(place)
      ? await findFreeText(database(), organizationId, { sittingId: sitting, place: Number(place) })
      : undefined;
  // Nobody marks their own.
  const asked = named?.learnerId === personId ? undefined : named;
  const text = asked ?? (await findOldestWaiting(database(), organizationId, personId));
  const count = await countWaitingTexts(database(), organizationId, personId);
  const marking = text && (await markingOf(text, personId, new Date()));
  const t = await getTranslations('written');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('marking.title')}</h1>
        <div role="status">{kept === 'yes' && text && !asked && <p className={ui.notice}>{t('marking.next')}</p>}</div>
        {!asked && <p className={ui.prose}>{t('marking.waiting', { count })}</p>}
        {text && marking && (
          <FreeTextPanel
            key={`${text.sittingId} ${text.place}`}
            text={text}
            mayName={marking.mayName}
            isNamed={names === 'yes' && marking.mayName}
            isHidden={marking.isHidden}
          />
        )}
        <MarkedLast organizationId={organizationId} readerId={personId} settings={await settingsFor(permit.session)} />
        <p>
          <Link className={styles.way} href="/questions" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
