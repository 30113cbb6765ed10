import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { Desk } from '@/app/_server/permit';
import { reviewCards } from '@/app/_server/sittings/review-cards';
import ui from '@/app/_ui/ui.module.css';
import styles from './progress.module.css';

/** What is due to be asked again, and where to practise. */
export async function DueSection({ desk, now }: { desk: Desk; now: Date }) {
  const t = await getTranslations('progress');
  const { due } = await reviewCards(desk, now);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="due">
      <h2 id="due">{t('dueTitle')}</h2>
      <p>
        {t('due', { count: due.length })}{' '}
        {due.length > 0 && (
          <Link className={styles.way} href="/learn/questions" prefetch={false}>
            {t('toReview')}
          </Link>
        )}
      </p>
      <p>
        <Link className={styles.way} href="/learn/topics" prefetch={false}>
          {t('toTopics')}
        </Link>
      </p>
    </section>
  );
}
