import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { readApplication } from '@/app/_server/applications/read-application';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { topicNames } from '@/app/_server/readiness/topic-names';
import lines from '@/app/_ui/lines.module.css';
import { shownDate } from '@/app/_ui/shown-date';
import { Sideways } from '@/app/_ui/sideways';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { logits } from '../../logits';
import styles from '../../schemes.module.css';
import { Deciding } from './deciding';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('applications');
  return { title: t('one') };
}

/** One application: what the evidence says under the version applied for, and the decision of somebody who may make it. */
export default page(
  '/schemes/applications/[applicationId]',
  async (permit, { params }: PageProps<'/schemes/applications/[applicationId]'>) => {
    const { applicationId } = await params;
    const { personId } = permit.session.actor;
    const read = await readApplication({ organizationId: organizationOf(permit), applicationId, personId }, new Date());
    if (!read) notFound();
    const { application, conflicts } = read;
    // What of one's own work is not told yet must not be told here.
    const isOwn = conflicts.includes('own');
    const standing = isOwn ? undefined : read.standing;
    const { scheme, state, appliedAt, decidedAt, reason } = application;
    const settings = await settingsFor(permit.session);
    const t = await getTranslations('applications');
    const nameOf = topicNames();
    return (
      <>
        <SiteHeader note={t(`state.${state}`)} />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('heading', { who: application.candidate ?? t('gone'), name: scheme.text.en.name })}</h1>
          <p>
            {t('appliedAt', { at: shownDate(appliedAt, settings), version: scheme.version })}{' '}
            <Link href={`/schemes/${scheme.id}?version=${scheme.version}`} prefetch={false}>
              {t('rules')}
            </Link>
          </p>
          {decidedAt && reason && (
            <p className={ui.notice}>{t('decidedAt', { at: shownDate(decidedAt, settings), reason })}</p>
          )}
          {!read.standing && <p className={ui.notice}>{t('noProfile')}</p>}
          {standing && (
            <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="evidence">
              <h2 id="evidence">{t('evidence')}</h2>
              <p className={ui.lead}>{t(`says.${standing.decision}`)}</p>
              <p>
                {t(`safety.${standing.safety.code}`, { cases: standing.safety.cases, events: standing.safety.events })}
              </p>
              <Sideways label={t('evidence')}>
                <table className={styles.table}>
                  <caption>{t('caption', { cut: logits(scheme.cut.ability) })}</caption>
                  <thead>
                    <tr>
                      {(['topic', 'says', 'chance', 'interval', 'responses'] as const).map((name) => (
                        <th key={name} scope="col">
                          {t(`col.${name}`)}
                        </th>
                      ))}
                    </tr>
                  </thead>
                  <tbody>
                    {standing.topics.map(({ topic, decision, chance, interval, responses }) => (
                      <tr key={topic}>
                        <th scope="row">{nameOf(topic)}</th>
                        <td>{t(`decision.${decision}`)}</td>
                        <td>{Math.round(100 * chance)} %</td>
                        <td>
                          {logits(interval[0])} … {logits(interval[1])}
                        </td>
                        <td>{responses}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </Sideways>
            </section>
          )}
          {state === 'open' && can(permit.session.actor, 'certificates.decide', permit.resource) && (
            <Deciding applicationId={application.id} standing={standing} conflicts={conflicts} />
          )}
          <p>
            <Link className={lines.way} href="/schemes/applications" prefetch={false}>
              {t('back')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);
