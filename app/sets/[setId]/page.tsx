import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { lookOver } from '@/app/_server/sets/look-over';
import { setEditorChoices } from '@/app/_server/sets/set-choices';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { findSet, listSetVersions } from '@/db/queries/sets';
import { draftOf } from '../editor/draft';
import { SetEditor } from '../editor/set-editor';
import { HoldingView } from '../holding/holding-view';
// Shown by an action alone, and yet among the parts that this page's browser has to know.
import '../preview/example-task';
import styles from '../sets.module.css';
import { KeptSet } from './kept-set';
import { SetActs } from './set-acts';
import { SetHistory } from './set-history';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('sets');
  return { title: t('one') };
}

/** One set: its newest version to be changed, or an older one to be read, and what can be done with it. */
export default page('/sets/[setId]', async (permit, { params, searchParams }: PageProps<'/sets/[setId]'>) => {
  const { setId } = await params;
  const asked = await searchParams;
  const organizationId = organizationOf(permit);
  const set = await findSet(database(), organizationId, setId);
  const versions = await listSetVersions(database(), setId);
  const version = versions.find(({ number }) => String(number) === asked.version) ?? versions[0];
  if (!set || !version) notFound();
  const isEdited = version === versions[0] && !set.archivedAt;
  const { holding, faults } = await lookOver(version.body, organizationId);
  const made = <HoldingView holding={holding} />;
  const editor = await setEditorChoices(organizationId);
  const t = await getTranslations('sets');
  return (
    <>
      <SiteHeader note={t('version', { number: version.number })} />
      <main id="main" className={ui.page}>
        <h1>{version.body.title}</h1>
        <p className={ui.prose}>
          {[
            set.archivedAt ? t('isArchived') : set.sharedAt ? t('isShared') : t('isUnshared'),
            version.frozenAt ? t(isEdited ? 'frozenNewest' : 'frozen') : '',
          ].join(' ')}
        </p>
        {isEdited ? (
          <SetEditor
            first={draftOf(version.body)}
            version={{ setId, versionId: version.id }}
            holding={made}
            never={faults}
            {...editor}
          />
        ) : (
          <KeptSet draft={draftOf(version.body)} holding={made} words={editor.words} choices={editor.choices} />
        )}
        <SetActs permit={permit} set={set} />
        <SetHistory versions={versions} shown={version} settings={await settingsFor(permit.session)} />
        <p>
          <Link className={styles.way} href="/sets" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});
