import Link from 'next/link';
import { getFormatter, getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { type Assigned, handleOf, whoIs } from '@/app/_server/review/who';
import ui from '@/app/_ui/ui.module.css';
import { listMarkedTwice, type MarkedTwice } from '@/db/queries/second-marks';
import { agreementOf } from '@/lib/reviewing/agreement';
import styles from '../review.module.css';
import { WhoWords } from '../who-words';

/** How far two markers agreed at an assignment, and each answer with both marks, those furthest apart first. */
export async function MarkedTwiceTable({
  assignment,
  now,
  readerId,
}: {
  assignment: Assigned;
  now: Date;
  readerId: string;
}) {
  // Nobody is told here how their own answer was marked.
  const pairs = (await listMarkedTwice(database(), assignment.id)).filter(({ learnerId }) => learnerId !== readerId);
  const [t, format] = [await getTranslations('review'), await getFormatter()];
  const { kappa, standardError, same, answers } = agreementOf(pairs);
  const figure = (value: number) => format.number(value, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const heading = `twice-${assignment.id}`;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby={heading}>
      <h2 id={heading}>{assignment.title}</h2>
      <p>{t('markedTwice', { count: answers })}</p>
      {answers > 0 && (
        <p className={styles.totals}>
          <b>
            {kappa === undefined || standardError === undefined
              ? t('kappaNone')
              : t('kappa', { kappa: figure(kappa), error: figure(standardError) })}
          </b>
          <span>{t('same', { same, count: answers })}</span>
        </p>
      )}
      {answers > 0 && <p className={ui.small}>{t('kappaRule')}</p>}
      {answers > 0 && <Pairs pairs={pairs} assignment={assignment} now={now} />}
    </section>
  );
}

async function Pairs({ pairs, assignment, now }: { pairs: readonly MarkedTwice[]; assignment: Assigned; now: Date }) {
  const t = await getTranslations('review');
  const { organizationId } = assignment;
  const whose = await Promise.all(pairs.map(({ learnerId }) => whoIs({ learnerId, organizationId, assignment }, now)));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section className={styles.pairs} aria-label={t('pairsTable', { title: assignment.title })} tabIndex={0}>
      <table className={ui.figures}>
        <thead>
          <tr>
            <th scope="col">{t('colWho')}</th>
            <th scope="col">{t('colFirst')}</th>
            <th scope="col">{t('colSecond')}</th>
            <th scope="col">{t('colApart')}</th>
            <th scope="col">{t('colOf')}</th>
          </tr>
        </thead>
        <tbody>
          {pairs.map(({ sittingId, place, learnerId, first, second, steps, firstMarker, secondMarker }, index) => (
            <tr key={`${sittingId} ${place}`}>
              <th scope="row">
                <Link className={styles.way} href={`/review/sittings/${sittingId}?at=${place}`} prefetch={false}>
                  <WhoWords who={whose[index] ?? { handle: handleOf(assignment.id, learnerId) }} />
                  {` · ${t('question', { place })}`}
                </Link>
              </th>
              <td>{t('markBy', { score: first, who: firstMarker ?? t('erased') })}</td>
              <td>{t('markBy', { score: second, who: secondMarker ?? t('erased') })}</td>
              <td>{Math.abs(first - second)}</td>
              <td>{steps}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
