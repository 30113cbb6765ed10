import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { truthView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { page } from '@/app/_server/guard';
import { limitFacts } from '@/app/_server/limit-facts';
import { paperCase } from '@/app/_server/paper-case';
import { limitWords } from '@/app/_ui/limit-words';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { Truth } from '@/app/learn/cases/[attemptId]/debrief/truth';
import styles from '../../paper.module.css';
import { shownText } from '../../shown-text';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('paper');
  return { title: t('key') };
}

/** The key to a case on paper: what is wrong, every verdict with its limit, and the checks that an expert would make. */
export default page('/paper/[code]/key', async (_, { params }: PageProps<'/paper/[code]/key'>) => {
  const code = decodeURIComponent((await params).code);
  const { theCase, certificate, rows } = paperCase(code);
  const { units } = await readDisplay();
  const t = await getTranslations('paper');
  const conditions = await getTranslations('conditions');
  const verdicts = await getTranslations('verdicts');
  const limits = await getTranslations('limits');
  const { cause, severity, also } = theCase.truth;
  const checkName = (id: string) => catalogue().checks.get(id)?.text.en.name ?? id;
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${styles.sheet}`}>
        <h1>{t('keyHeading', { code: theCase.code })}</h1>
        <p className={styles.screen}>
          {t('keyHint')}{' '}
          <Link href={`/paper/${encodeURIComponent(code)}`} prefetch={false}>
            {t('sheet')}
          </Link>
        </p>
        <Truth view={{ truths: [{ cause, severity }, ...(also ? [also] : [])].map(truthView) }} />
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="route">
          <h2 id="route">{t('route', { minutes: certificate.route.minutes })}</h2>
          {!certificate.settled && <p className={ui.notice}>{t('unsettled')}</p>}
          <ol>
            {certificate.route.steps.map(({ check, condition }) => (
              <li key={`${check} ${condition}`}>
                {checkName(check)}, {conditions(condition)}
              </li>
            ))}
          </ol>
        </section>
        <div className={styles.scroll}>
          <table className={styles.readings}>
            <caption>{t('readings')}</caption>
            <thead>
              <tr>
                <th scope="col">{t('colCheck')}</th>
                <th scope="col">{t('colReading')}</th>
                <th scope="col">{t('colLimit')}</th>
                <th scope="col">{t('colVerdict')}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={`${row.check.id} ${row.condition} ${row.quantity.id}`}>
                  <th scope="row">
                    {row.check.text.en.name} <span className={ui.small}>{conditions(row.condition)}</span>
                    {row.onRoute && <span className={ui.small}> · {t('onRoute')}</span>}
                  </th>
                  <td className={styles.value}>{shownText(row, units)}</td>
                  <td>
                    {row.limit
                      ? limitWords(limits, row.limit, units, limitFacts(catalogue(), row.limit))
                      : t('noLimit')}
                  </td>
                  <td>{row.verdict ? verdicts(row.verdict) : '–'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </main>
    </>
  );
});
