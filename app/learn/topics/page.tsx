import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { page } from '@/app/_server/guard';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { topicsInOrder } from '@/lib/topics/topic';
import { TopicPanel } from './topic-panel';
import styles from './topics.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('topics');
  return { title: t('title') };
}

/** The parts of the trade, each with its checks and a case to practise it on. */
export default page('/learn/topics', async () => {
  const t = await getTranslations('topics');
  const topics = topicsInOrder(catalogue());
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <p className={ui.prose}>{t('body')}</p>
        <nav aria-label={t('list')}>
          <ol className={`${ui.steps} ${styles.list}`}>
            {topics.map(({ id, text }) => (
              <li key={id}>
                <a className={styles.way} href={`#${id}`}>
                  {text.en.name}
                </a>
              </li>
            ))}
          </ol>
        </nav>
        {topics.map((topic) => (
          <TopicPanel key={topic.id} topic={topic} />
        ))}
        <p>
          <Link className={styles.way} href="/learn" prefetch={false}>
            {t('back')}
          </Link>
        </p>
        <SafetyNote />
      </main>
    </>
  );
});
