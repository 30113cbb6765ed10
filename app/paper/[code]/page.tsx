import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { toString as qrCode } from 'qrcode';
import { faceOfCase } from '@/app/_server/attempt-view';
import { readDisplay } from '@/app/_server/display';
import { drawingOf } from '@/app/_server/drawings';
import { env } from '@/app/_server/env';
import { page } from '@/app/_server/guard';
import { paperCase } from '@/app/_server/paper-case';
import { DrawingPanel } from '@/app/_ui/drawing/drawing-panel';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { WorkOrder } from '@/app/learn/cases/[attemptId]/work-order';
import styles from '../paper.module.css';
import { shownText } from '../shown-text';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('paper');
  return { title: t('sheet') };
}

/** A case on paper: work order, drawing, readings with room for verdict and reason. What is wrong stands on the key alone. */
export default page('/paper/[code]', async (_, { params }: PageProps<'/paper/[code]'>) => {
  const code = decodeURIComponent((await params).code);
  const { theCase, rows } = paperCase(code);
  const { units } = await readDisplay();
  const t = await getTranslations('paper');
  const conditions = await getTranslations('conditions');
  const practice = `${env.FAULTWRIGHT_ORIGIN}/learn?code=${encodeURIComponent(theCase.code)}`;
  const face = faceOfCase(theCase);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${styles.sheet}`}>
        <p className={styles.screen}>
          {t('printHint')}{' '}
          <Link href={`/paper/${encodeURIComponent(code)}/key`} prefetch={false}>
            {t('key')}
          </Link>
        </p>
        <div className={styles.top}>
          <WorkOrder face={face} units={units} />
          <figure className={styles.qr}>
            <div
              role="img"
              aria-label={t('qr')}
              // biome-ignore lint/security/noDangerouslySetInnerHtml: made here, of an address of our own
              dangerouslySetInnerHTML={{ __html: await qrCode(practice, { type: 'svg', margin: 0 }) }}
            />
            <figcaption className={ui.code}>{theCase.code}</figcaption>
          </figure>
        </div>
        <p className={styles.lines}>
          <span>{t('name')}</span>
          <span>{t('date')}</span>
        </p>
        <DrawingPanel rig={theCase.rig} drawing={drawingOf(theCase.rig.id)} />
        <div className={styles.scroll}>
          <table className={styles.readings}>
            <caption>{t('readings')}</caption>
            <thead>
              <tr>
                <th scope="col">{t('colCheck')}</th>
                <th scope="col">{t('colReading')}</th>
                <th scope="col">{t('colVerdict')}</th>
                <th scope="col">{t('colReason')}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={`${row.check.id} ${row.condition} ${row.quantity.id}`}>
                  <th scope="row">
                    {row.check.text.en.name}
                    {row.check.quantities.length > 1 &&
                      `: ${row.check.text.en.quantities?.[row.quantity.id] ?? row.quantity.id}`}
                    <span className={ui.small}>
                      {' '}
                      {conditions(row.condition)}, {row.instrument.text.en.name}, {row.instrument.text.en.accuracy}
                    </span>
                  </th>
                  <td className={styles.value}>{shownText(row, units)}</td>
                  <td className={styles.choices}>{t('verdicts')}</td>
                  <td />
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <section className={styles.call}>
          <h2>{t('callTitle')}</h2>
          {(['cause', 'repair', 'proof'] as const).map((part) => (
            <p key={part}>{t(part)}</p>
          ))}
        </section>
        <SafetyNote />
      </main>
    </>
  );
});
