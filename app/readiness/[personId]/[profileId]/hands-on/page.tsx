import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getMessages, getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { memberNamed } from '@/app/_server/people/change-member';
import { findProfile } from '@/app/_server/profiles';
import { topicNames } from '@/app/_server/readiness/topic-names';
import { ActForm } from '@/app/_ui/act-form';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import type messages from '@/content/messages/en.json';
import { localTimeOf } from '@/lib/assignments/local-time';
import type { RoleProfile } from '@/lib/readiness/profile';
import { topicsInOrder } from '@/lib/topics/topic';
import styles from '../../../readiness.module.css';
import { writeObservation } from '../actions';
import { ExtraItems } from './extra-items';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('readiness');
  return { title: t('title') };
}

/** The checklist of somebody who watches another at work with their hands. */
export default page(
  '/readiness/[personId]/[profileId]/hands-on',
  async (permit, { params }: PageProps<'/readiness/[personId]/[profileId]/hands-on'>) => {
    const { profileId } = await params;
    const person = await memberNamed(permit);
    const profile = await findProfile(database(), person.organizationId, profileId);
    if (!profile) notFound();
    const { timeZone } = await settingsFor(permit.session);
    const today = localTimeOf(Date.now(), timeZone).slice(0, 10);
    const { handsOn: words } = (await getMessages()) as Pick<typeof messages, 'handsOn'>;
    const t = await getTranslations('handsOn');
    const problems = await getTranslations('problems');
    const back = `/readiness/${person.userId}/${profile.id}`;
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('title', { name: person.name })}</h1>
          <p>{profile.text.en.name}</p>
          <p className={ui.prose}>{t('body')}</p>
          <SafetyNote />
          <section className={`${ui.panel} ${ui.stack}`} aria-label={t('items')}>
            <ActForm className={ui.stack} action={writeObservation} submit={t('store')} failed={problems('no-answer')}>
              <input type="hidden" name="personId" value={person.userId} />
              <input type="hidden" name="profileId" value={profile.id} />
              <AskedItems profile={profile} />
              <ExtraItems
                words={words}
                topics={topicsInOrder(catalogue()).map(({ id, text }) => ({ value: id, label: text.en.name }))}
              />
              <label className={ui.field}>
                <span>{t('date')}</span>
                <input type="date" name="observedOn" defaultValue={today} max={today} required />
              </label>
              <label className={styles.tick}>
                <input type="checkbox" name="unsafe" value="yes" aria-describedby="unsafe-rule" />
                {t('unsafe')}
              </label>
              <p id="unsafe-rule" className={ui.small}>
                {t('unsafeRule')}
              </p>
              <label className={ui.field}>
                <span>{t('comment')}</span>
                <textarea name="comment" rows={3} maxLength={1000} aria-describedby="comment-rule" required />
              </label>
              <p id="comment-rule" className={ui.small}>
                {t('commentRule')}
              </p>
            </ActForm>
          </section>
          <p>
            <Link className={styles.way} href={back} prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);

async function AskedItems({ profile: { handsOn } }: { profile: RoleProfile }) {
  const t = await getTranslations('handsOn');
  const names = topicNames();
  if (!handsOn) return <p>{t('noItems')}</p>;
  return (
    <>
      <h2>{t('items')}</h2>
      {handsOn.map(({ id, text, topic, outOf, pass }) => (
        <fieldset key={id} className={`${styles.check} ${ui.stack}`}>
          <legend className={styles.legend}>{text.en}</legend>
          <p className={ui.small}>{names(topic)}</p>
          <div className={styles.scores}>
            {Array.from({ length: outOf + 1 }, (_, score) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a score is its own name
              <label key={score} className={styles.tick}>
                <input type="radio" name={`score-${id}`} value={score} required />
                {t('scoreOf', { score, outOf, pass: score >= pass ? 'yes' : 'no' })}
              </label>
            ))}
          </div>
        </fieldset>
      ))}
    </>
  );
}
