import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import ui from '@/app/_ui/ui.module.css';
import type { WrittenVersion } from '@/db/queries/written-questions';
import { QuestionPreview } from '../preview/question-preview';
import styles from '../questions.module.css';

/** A version that is not being changed here, as a learner sees it. */
export async function KeptPreview({
  version: { questionId, number, body },
  asked: { draw, answer },
}: {
  version: WrittenVersion;
  asked: Readonly<Record<string, string | string[] | undefined>>;
}) {
  const drawn = typeof draw === 'string' && /^\d{1,6}$/.test(draw) ? Number(draw) : 0;
  const answers = answer === 'yes';
  const t = await getTranslations('written');
  const address = (n: number, told: boolean) =>
    `/questions/${questionId}?${new URLSearchParams({ version: String(number), draw: String(n), ...(told && { answer: 'yes' }) })}`;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="preview">
      <h2 id="preview">{t('previewTitle')}</h2>
      <p className={styles.ways}>
        <Link className={styles.way} href={address(drawn + 1, answers)} prefetch={false} scroll={false}>
          {t('previewDraw')}
        </Link>
        <Link className={styles.way} href={address(drawn, !answers)} prefetch={false} scroll={false}>
          {answers ? t('previewQuestion') : t('previewAnswer')}
        </Link>
      </p>
      {/* What is chosen here goes nowhere: it has no button that sends it. */}
      <form key={`${number} ${drawn}`}>
        <QuestionPreview written={body} seed={String(drawn)} answers={answers} />
      </form>
    </section>
  );
}
