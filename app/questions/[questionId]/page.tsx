import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { editorChoices } from '@/app/_server/questions/written/editor-choices';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listNames } from '@/db/queries/names';
import { listVersions, type WrittenVersion } from '@/db/queries/written-questions';
import { can } from '@/lib/accounts/can';
import { draftOf } from '../editor/draft';
import { QuestionEditor } from '../editor/question-editor';
import { QuestionPreview } from '../preview/question-preview';
import styles from '../questions.module.css';
import { KeptPreview } from './kept-preview';
import { VersionActs } from './version-acts';
import { VersionHistory } from './version-history';
import { VersionState } from './version-state';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('written');
  return { title: t('one') };
}

/** One question: the newest version or the one that was asked for, what happens next, and all versions. */
export default page(
  '/questions/[questionId]',
  async (permit, { params, searchParams }: PageProps<'/questions/[questionId]'>) => {
    const { questionId } = await params;
    const asked = await searchParams;
    const versions = await listVersions(database(), questionId);
    const version = versions.find(({ number }) => String(number) === asked.version) ?? versions[0];
    if (!version) notFound();
    const isNewest = version === versions[0];
    const { actor } = permit.session;
    const writes = can(actor, 'questions.write', permit.resource);
    const isEdited = isNewest && writes && version.state === 'draft' && version.writtenBy === actor.personId;
    const people = versions.flatMap(({ writtenBy, reviewedBy }) => [writtenBy, reviewedBy ?? '']);
    const names = new Map(
      (await listNames(database(), organizationOf(permit), people)).map(({ id, name }) => [id, name]),
    );
    const settings = await settingsFor(permit.session);
    const t = await getTranslations('written');
    return (
      <>
        <SiteHeader note={t(`forms.${version.form}`)} />
        <main id="main" className={ui.page}>
          <h1>{version.title}</h1>
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="state">
            <h2 id="state">{t('state.title')}</h2>
            <VersionState permit={permit} version={version} isNewest={isNewest} names={names} settings={settings} />
          </section>
          {isEdited ? <Editor version={version} /> : <KeptPreview version={version} asked={asked} />}
          {isNewest && writes && <VersionActs permit={permit} version={version} />}
          <VersionHistory versions={versions} shown={version} names={names} settings={settings} />
          <p>
            <Link className={styles.way} href="/questions" prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);

async function Editor({ version: { id, questionId, body } }: { version: WrittenVersion }) {
  return (
    <QuestionEditor
      key={id}
      first={draftOf(body)}
      version={{ questionId, versionId: id }}
      shown={<QuestionPreview written={body} seed="0" answers={false} />}
      {...(await editorChoices())}
    />
  );
}
