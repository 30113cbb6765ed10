import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countWaitingTexts } from '@/db/queries/manual-marks';
import { countWrittenQuestions, listWrittenQuestions } from '@/db/queries/written-questions';
import { can } from '@/lib/accounts/can';
import { topicsInOrder } from '@/lib/topics/topic';
import { filterFrom } from './parse-filter';
import { QuestionFilter, StateChoice } from './question-filter';
import { QuestionTable } from './question-table';
import styles from './questions.module.css';

/** As many as a page holds; beyond, one narrows it down. */
const LISTED = 300;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('written');
  return { title: t('title') };
}

/** The questions that people of the organisation wrote. */
export default page('/questions', async (permit, { searchParams }: PageProps<'/questions'>) => {
  const topics = topicsInOrder(catalogue()).map(({ id, text }) => ({ id, name: text.en.name }));
  const filter = filterFrom(
    await searchParams,
    topics.map(({ id }) => id),
  );
  const organizationId = organizationOf(permit);
  const questions = await listWrittenQuestions(database(), organizationId, filter, LISTED);
  const counts = await countWrittenQuestions(database(), organizationId, filter);
  const { actor } = permit.session;
  const t = await getTranslations('written');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('intro')}</p>
        <p className={styles.ways}>
          {can(actor, 'questions.write', permit.resource) && (
            <Link className={ui.primary} href="/questions/new" prefetch={false}>
              {t('write')}
            </Link>
          )}
          {can(actor, 'questions.write', permit.resource) && (
            <Link className={styles.way} href="/questions/exchange" prefetch={false}>
              {t('exchange')}
            </Link>
          )}
          {can(actor, 'questions.mark', permit.resource) && (
            <Link className={styles.way} href="/questions/to-mark" prefetch={false}>
              {t('toMark', { count: await countWaitingTexts(database(), organizationId) })}
            </Link>
          )}
        </p>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('list')}>
          <QuestionFilter filter={filter} topics={topics} />
          <StateChoice filter={filter} counts={counts} />
          <p className={ui.small} role="status">
            {t('count', { count: questions.length })} {questions.length === LISTED && t('limited', { count: LISTED })}
          </p>
          {questions.length > 0 && (
            <QuestionTable questions={questions} topics={topics} settings={await settingsFor(permit.session)} />
          )}
        </section>
      </main>
    </>
  );
});
