import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { proposedTraining } from '@/app/_server/readiness/proposed-training';
import { lookOver } from '@/app/_server/sets/look-over';
import { setEditorChoices } from '@/app/_server/sets/set-choices';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { draftOf, emptyDraft } from '../editor/draft';
import { SetEditor } from '../editor/set-editor';
import { HoldingView } from '../holding/holding-view';
// Shown by an action alone, and yet among the parts that this page's browser has to know.
import '../preview/example-task';
import styles from '../sets.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('sets');
  return { title: t('newTitle') };
}

/** Building a set: from nothing, from one of the ready ones, or from what a report says is to be trained next. */
export default page('/sets/new', async (permit, { searchParams }: PageProps<'/sets/new'>) => {
  const { from, train, profile } = await searchParams;
  const organizationId = organizationOf(permit);
  const ready = typeof from === 'string' ? catalogue().readySets.get(from) : undefined;
  const training = await proposedTraining(organizationId, { train, profile });
  const body = ready?.body ?? training;
  const { holding, faults } = await lookOver(body ?? { items: [] }, organizationId);
  const t = await getTranslations('sets');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('newTitle')}</h1>
        {ready && <p className={ui.prose}>{t('fromReady', { title: ready.body.title })}</p>}
        {training && <p className={ui.prose}>{t('fromReport')}</p>}
        <SetEditor
          key={ready?.id}
          first={body ? draftOf(body) : emptyDraft()}
          holding={<HoldingView holding={holding} />}
          never={faults}
          {...(await setEditorChoices(organizationId))}
        />
        <p>
          <Link className={styles.way} href="/sets" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
