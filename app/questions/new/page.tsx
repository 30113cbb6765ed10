import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { page } from '@/app/_server/guard';
import { editorChoices } from '@/app/_server/questions/written/editor-choices';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { emptyDraft } from '../editor/draft';
import { QuestionEditor } from '../editor/question-editor';
// Shown by an action alone, and yet among the parts that this page's browser has to know.
import '../preview/question-preview';
import styles from '../questions.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('written');
  return { title: t('newTitle') };
}

/** Writing a question: first how it is answered, then the editor. */
export default page('/questions/new', async (_permit, { searchParams }: PageProps<'/questions/new'>) => {
  const { form: asked } = await searchParams;
  const form = writtenForms.find((known) => known === asked);
  const t = await getTranslations('written');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{form ? t('newOf', { form: t(`forms.${form}`) }) : t('newTitle')}</h1>
        {form ? <QuestionEditor key={form} first={emptyDraft(form)} {...(await editorChoices())} /> : <Forms />}
        <p>
          <Link className={styles.way} href="/questions" prefetch={false}>
            {t('back')}
          </Link>
        </p>
      </main>
    </>
  );
});

async function Forms() {
  const t = await getTranslations('written');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-label={t('newTitle')}>
      <p className={ui.prose}>{t('newBody')}</p>
      <ul className={styles.forms}>
        {writtenForms.map((form) => (
          <li key={form}>
            <Link className={styles.way} href={`/questions/new?form=${form}`} prefetch={false}>
              {t(`forms.${form}`)}
            </Link>
            <span className={styles.sub}>{t(`about.${form}`)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
