import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { readOwnIntakes } from '@/app/_server/intakes/read-own';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { readAllGiven } from '@/app/_server/turns/read-given';
import { listUntold } from '@/app/_server/turns/untold';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listAttempts } from '@/db/queries/attempts';
import { topicsInOrder } from '@/lib/topics/topic';
import { startCaseByCode } from './actions';
import { AssignedPanel } from './assigned-panel';
import { AttemptTable } from './attempt-table';
import { Coached } from './coached';
import { IntakesPanel } from './intakes-panel';
import styles from './learn.module.css';
import { NextPanel } from './next-panel';
import { ChooseRandom } from './start-random';

/** As many as one looks back over. */
const LISTED = 50;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('learn');
  return { title: t('title') };
}

export default page('/learn', async (permit, { searchParams }: PageProps<'/learn'>) => {
  const { code } = await searchParams;
  const desk = deskOf(permit);
  const now = new Date();
  const given = await readAllGiven(desk, now);
  const intakes = await readOwnIntakes(desk, now);
  const attempts = await listAttempts(database(), desk, LISTED);
  const untold = await listUntold(database(), desk, now);
  const settings = await settingsFor(permit.session);
  const rigs = [...catalogue().rigs.values()].map(named);
  const topics = topicsInOrder(catalogue()).map(named);
  const t = await getTranslations('learn');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <NextPanel desk={desk} now={now} />
        <IntakesPanel intakes={intakes} settings={settings} />
        <AssignedPanel given={given} settings={settings} />
        <div className={styles.ways}>
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="random">
            <h2 id="random">{t('randomTitle')}</h2>
            <p>{t('randomBody')}</p>
            <ChooseRandom rigs={rigs} topics={topics} />
            <p>
              <Link className={styles.way} href="/learn/topics" prefetch={false}>
                {t('topicsLink')}
              </Link>
            </p>
            <p>
              <Link className={styles.way} href="/learn/questions" prefetch={false}>
                {t('questionsLink')}
              </Link>
            </p>
            <p>
              <Link className={styles.way} href="/learn/progress" prefetch={false}>
                {t('progressLink')}
              </Link>
            </p>
            <p>
              <Link className={styles.way} href="/learn/certificates" prefetch={false}>
                {t('certificatesLink')}
              </Link>
            </p>
          </section>
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="by-code">
            <h2 id="by-code">{t('codeTitle')}</h2>
            <p>{t('codeBody')}</p>
            <ActForm
              className={ui.stack}
              action={startCaseByCode}
              submit={t('byCode')}
              failed={problems('start-failed')}
            >
              <Field
                label={t('code')}
                rule={t('codeExample')}
                code
                name="code"
                defaultValue={typeof code === 'string' ? code.slice(0, 200) : undefined}
                required
                maxLength={200}
                autoComplete="off"
                autoCapitalize="characters"
                spellCheck={false}
              />
              <Coached id="coached-by-code" />
            </ActForm>
          </section>
        </div>
        <section className={ui.panel} aria-labelledby="attempts">
          <div className={ui.head}>
            <h2 id="attempts">{t('attempts')}</h2>
            {attempts.length === LISTED && <span className={ui.small}>{t('shownLatest', { count: LISTED })}</span>}
          </div>
          {attempts.length === 0 ? (
            <p>{t('noAttempts')}</p>
          ) : (
            <AttemptTable attempts={attempts} untold={untold.attempts} settings={settings} />
          )}
        </section>
        <SafetyNote />
      </main>
    </>
  );
});

function named({ id, text }: { id: string; text: { en: { name: string } } }) {
  return { id, name: text.en.name };
}
