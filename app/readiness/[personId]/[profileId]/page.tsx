import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { listProfiles } from '@/app/_server/profiles';
import { readOdds } from '@/app/_server/readiness/read-odds';
import { type Report, readReport } from '@/app/_server/readiness/read-report';
import { type ReportText, reportText } from '@/app/_server/readiness/report-text';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import { DecisionMark } from '../../decision-mark';
import styles from '../../readiness.module.css';
import { HandsOnChecks } from './hands-on-checks';
import { OddsSection } from './odds-section';
import { SignOffSection } from './sign-off-section';
import { TopicsTable } from './topics-table';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('readiness');
  return { title: t('title') };
}

/** What one person may be trusted with in a role: what the evidence says, how sure, what is missing, and who signed. */
export default page(
  '/readiness/[personId]/[profileId]',
  async (permit, { params }: PageProps<'/readiness/[personId]/[profileId]'>) => {
    const { profileId } = await params;
    const report = await readReport(permit, profileId, new Date());
    if (!report) notFound();
    const { actor, name } = permit.session;
    const text = await reportText(report, await readOdds(report.profile), name);
    return (
      <>
        <SiteHeader />
        <main id="main" className={ui.page}>
          <h1>{text.title}</h1>
          {text.invented && <p className={ui.notice}>{text.invented}</p>}
          <Head report={report} text={text} />
          <TopicsTable topics={text.topics} />
          <Findings text={text} report={report} mayBuild={can(actor, 'sets.change', organizationBehind(report))} />
          <SignOffSection report={report} permit={permit} />
          <HandsOnChecks report={report} permit={permit} />
          <OddsSection text={text} />
          <SafetyNote />
          <Ways report={report} text={text} />
        </main>
      </>
    );
  },
);

function organizationBehind({ person }: Report) {
  return { kind: 'organization', organizationId: person.organizationId } as const;
}

async function Head({ report: { profile }, text }: { report: Report; text: ReportText }) {
  const t = await getTranslations('readiness.report');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="sentences">
      <DecisionMark decision={text.decision.code} word={text.decision.word} large />
      <p className={ui.small}>{profile.text.en.about}</p>
      <h2 id="sentences">{t('sentences')}</h2>
      <ol className={`${ui.steps} ${ui.prose}`}>
        {text.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    </section>
  );
}

async function Findings({ text, report, mayBuild }: { text: ReportText; report: Report; mayBuild: boolean }) {
  const t = await getTranslations('readiness.report');
  const topics = report.trainings.map(({ topic }) => topic).join(',');
  return (
    <div className={styles.columns}>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="safety">
        <h2 id="safety">{t('safetyTitle')}</h2>
        <p>{text.safety}</p>
        <h2>{t('changesTitle')}</h2>
        <Lines lines={text.changes} />
      </section>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="train">
        <h2 id="train">{t('trainTitle')}</h2>
        <Lines lines={text.trainings} />
        {topics !== '' && !mayBuild && <p className={ui.small}>{t('noSet')}</p>}
        {topics !== '' && mayBuild && (
          <>
            <p>
              <Link
                className={styles.way}
                href={`/sets/new?${new URLSearchParams({ train: topics, profile: report.profile.id })}`}
                prefetch={false}
              >
                {t('toSet')}
              </Link>
            </p>
            <p className={ui.small}>{t('setNote')}</p>
          </>
        )}
      </section>
    </div>
  );
}

function Lines({ lines }: { lines: readonly string[] }) {
  return (
    <ul className={styles.lines}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

async function Ways({ report, text }: { report: Report; text: ReportText }) {
  const { person, profile } = report;
  const t = await getTranslations('readiness.report');
  const others = (await listProfiles(database(), person.organizationId)).filter(({ id }) => id !== profile.id);
  return (
    <>
      <p className={ui.small}>{text.versions}</p>
      <p className={styles.ways}>
        <a href={`/readiness/${person.userId}/${profile.id}/pdf`} download>
          {t('pdf')}
        </a>
        {others.map(({ id, text: words }) => (
          <Link key={id} href={`/readiness/${person.userId}/${id}`} prefetch={false}>
            {words.en.name}
          </Link>
        ))}
        <Link href={`/readiness?profile=${profile.id}`} prefetch={false}>
          {t('toBoard')}
        </Link>
      </p>
    </>
  );
}
