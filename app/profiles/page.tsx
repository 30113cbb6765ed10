import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { type HeldProfile, listHeldProfiles, versionOf } from '@/app/_server/profiles';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { ProfileFacts } from './profile-facts';
import styles from './profiles.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('profiles');
  return { title: t('title') };
}

/** What people may be trusted with here, and what each of it takes. */
export default page('/profiles', async (permit) => {
  const held = await listHeldProfiles(database(), organizationOf(permit));
  const t = await getTranslations('profiles');
  const inUse = held.filter(({ retired }) => !retired);
  const retired = held.filter((one) => one.retired);
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        {inUse.map((one) => (
          <ProfilePanel key={one.profile.id} held={one} />
        ))}
        {retired.length > 0 && <h2>{t('retiredTitle')}</h2>}
        {retired.map((one) => (
          <ProfilePanel key={one.profile.id} held={one} />
        ))}
        <p>
          <Link className={styles.way} href="/readiness" prefetch={false}>
            {t('toBoard')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function ProfilePanel({ held }: { held: HeldProfile }) {
  const { profile } = held;
  const { name, about } = profile.text.en;
  const t = await getTranslations('profiles');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby={profile.id}>
      <h2 id={profile.id}>
        <Link href={`/profiles/${profile.id}`} prefetch={false}>
          {name}
        </Link>
      </h2>
      <p className={ui.prose}>{about}</p>
      <ProfileFacts profile={profile} />
      <p className={ui.small}>
        {t('version', { number: versionOf(held) })} · {t(held.stored ? 'own' : 'ready')}
      </p>
    </section>
  );
}
