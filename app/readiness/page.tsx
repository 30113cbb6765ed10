import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { listProfiles } from '@/app/_server/profiles';
import { readBoard } from '@/app/_server/readiness/read-board';
import { topicNames } from '@/app/_server/readiness/topic-names';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { packedPeople } from '@/lib/readiness/board-wire';
import type { RoleProfile } from '@/lib/readiness/profile';
import { BoardView } from './board/board-view';
import { parseBoardView } from './board/view-query';
import { readBoardWords } from './board/words';
import styles from './readiness.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('readiness');
  return { title: t('title') };
}

/** Who may be trusted with what: everybody who learns here, under one role profile. */
export default page('/readiness', async (permit, { searchParams }: PageProps<'/readiness'>) => {
  const query = await searchParams;
  const profiles = await listProfiles(database(), organizationOf(permit));
  const profile = profiles.find(({ id }) => id === query.profile) ?? profiles[0];
  const t = await getTranslations('readiness');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        {profile ? (
          <>
            <Profiles profiles={profiles} chosen={profile.id} />
            <Board
              organizationId={organizationOf(permit)}
              readerId={permit.session.actor.personId}
              profile={profile}
              query={query}
            />
          </>
        ) : (
          <p className={ui.notice}>{t('noProfiles')}</p>
        )}
        {can(permit.session.actor, 'intakes.see', permit.resource) && (
          <p>
            <Link className={styles.way} href="/intakes" prefetch={false}>
              {t('toIntakes')}
            </Link>
          </p>
        )}
        <p>
          <Link className={styles.way} href="/profiles" prefetch={false}>
            {t('toProfiles')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function Profiles({ profiles, chosen }: { profiles: readonly RoleProfile[]; chosen: string }) {
  const t = await getTranslations('readiness');
  return (
    <nav aria-label={t('profile')}>
      <ul className={styles.choices}>
        {profiles.map(({ id, text }) => (
          <li key={id}>
            <Link href={`/readiness?profile=${id}`} prefetch={false} aria-current={id === chosen ? 'page' : undefined}>
              {text.en.name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

async function Board({
  organizationId,
  readerId,
  profile,
  query,
}: {
  organizationId: string;
  readerId: string;
  profile: RoleProfile;
  query: Readonly<Record<string, unknown>>;
}) {
  const { people, classes } = await readBoard(organizationId, profile, { now: new Date(), readerId });
  const t = await getTranslations('readiness');
  const names = topicNames();
  return (
    <>
      <p className={ui.prose}>{profile.text.en.about}</p>
      {people.length === 0 ? (
        <p className={ui.notice}>{t('nobodyLearns')}</p>
      ) : (
        <BoardView
          key={profile.id}
          profileId={profile.id}
          topics={profile.topics.map(({ topic }) => ({ id: topic, title: names(topic) }))}
          people={packedPeople(people)}
          classes={classes}
          at={parseBoardView(query)}
          words={await readBoardWords()}
        />
      )}
    </>
  );
}
