import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getMessages, getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { findHeldProfile, type HeldProfile, versionOf } from '@/app/_server/profiles';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import type { EditorWords } from '@/app/questions/editor/editor-context';
import { can } from '@/lib/accounts/can';
import { topicsInOrder } from '@/lib/topics/topic';
import { copyProfile, retireProfile } from '../actions';
import { draftOf } from '../editor/draft';
import { ProfileEditor, type ProfileWords } from '../editor/profile-editor';
import { ProfileFacts } from '../profile-facts';
import styles from '../profiles.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('profiles');
  return { title: t('one') };
}

/** One role profile: what it asks for, and for those who may the means to change it. */
export default page('/profiles/[profileId]', async (permit, { params }: PageProps<'/profiles/[profileId]'>) => {
  const { profileId } = await params;
  const held = await findHeldProfile(database(), organizationOf(permit), profileId);
  if (!held) notFound();
  const t = await getTranslations('profiles');
  const mayChange = can(permit.session.actor, 'profiles.change', permit.resource);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{held.profile.text.en.name}</h1>
        {held.retired && <p className={ui.notice}>{t('isRetired')}</p>}
        <p className={ui.small}>{t('version', { number: versionOf(held) })}</p>
        {mayChange ? (
          <Changing held={held} />
        ) : (
          <section className={`${ui.panel} ${ui.stack}`} aria-label={t('one')}>
            <ProfileFacts profile={held.profile} />
          </section>
        )}
        <SafetyNote />
        <p>
          <Link className={styles.way} href="/profiles" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function Changing({ held }: { held: HeldProfile }) {
  const { profile, retired } = held;
  const { profiles, written } = (await getMessages()) as {
    profiles: { editor: ProfileWords };
    written: { editor: EditorWords };
  };
  const t = await getTranslations('profiles');
  const problems = await getTranslations('problems');
  const named = (
    <>
      <input type="hidden" name="profileId" value={profile.id} />
      <input type="hidden" name="version" value={versionOf(held)} />
    </>
  );
  return (
    <>
      {!retired && (
        <>
          <p className={ui.prose}>{t('changeBody')}</p>
          <ProfileEditor
            profileId={profile.id}
            version={versionOf(held)}
            first={draftOf(profile)}
            topics={topicsInOrder(catalogue()).map(({ id, text }) => ({ value: id, label: text.en.name }))}
            words={profiles.editor}
            fieldWords={written.editor}
          />
        </>
      )}
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="copy">
        <h2 id="copy">{t('copyTitle')}</h2>
        <ActForm className={ui.stack} action={copyProfile} submit={t('copy')} failed={problems('no-answer')} quiet>
          {named}
          <Field label={t('copyName')} name="name" maxLength={80} required />
        </ActForm>
      </section>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="retire">
        <h2 id="retire">{t(retired ? 'restore' : 'retire')}</h2>
        <p className={ui.prose}>{t(retired ? 'restoreBody' : 'retireBody')}</p>
        <ActForm action={retireProfile} submit={t(retired ? 'restore' : 'retire')} failed={problems('no-answer')} quiet>
          {named}
        </ActForm>
      </section>
    </>
  );
}
