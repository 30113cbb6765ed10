import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { readSittingFromPerson } from '@/app/_server/review/from-person';
import type { ReadSitting, SittingPlace } from '@/app/_server/sittings/read-sitting';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import { Reveal } from '@/app/_ui/reveal';
import ui from '@/app/_ui/ui.module.css';
import { OnWhole, QuestionFromPerson } from '@/app/learn/appeals/question-from-person';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { EffectiveQuestion } from '@/lib/reviewing/effective';
import learn from '../../learn.module.css';
import { StartDrill } from '../../questions/start-drill';
import { earned, placeMarked } from './ask';
import styles from './sitting.module.css';

/** How a sitting went, and each of its questions explained. */
export async function Result({
  read,
  place,
  units,
  settings,
}: {
  read: ReadSitting;
  place: SittingPlace | undefined;
  units: UnitChoice;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('sittings');
  const fromPerson = await readSittingFromPerson(read, new Date());
  const marked = read.places.filter((one) => one.mark !== undefined);
  const uncounted = read.sitting.mode === 'check' ? read.places.length - marked.length : 0;
  const waiting = marked.filter((one) => earned(one) === null).length;
  const counted = marked.filter((one) => earned(one) !== null);
  const [topic] = read.sitting.topics;
  const shown = place && placeMarked(place, units);
  return (
    <>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="result">
        <h2 id="result">{t('resultTitle')}</h2>
        <p className={ui.lead}>{counted.length === 0 ? t('resultNone') : t('result', pointsOf(counted))}</p>
        {waiting > 0 && <p>{t('resultWaiting', { count: waiting })}</p>}
        {uncounted > 0 && <p>{t('counted', { count: uncounted })}</p>}
        {marked.length > 0 && (
          <ol className={styles.results} aria-label={t('resultList')}>
            {marked.map((one) => (
              <li key={one.place}>
                <ResultLine
                  place={one}
                  chosen={one.place === place?.place}
                  counts={fromPerson?.effective.get(one.place)}
                />
              </li>
            ))}
          </ol>
        )}
        {read.sitting.mode === 'drill' && topic !== undefined && <StartDrill topic={topic} label={t('again')} />}
      </section>
      {shown && place && (
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="question">
          <h2 id="question" tabIndex={-1}>
            {t('question', { place: place.place })}
          </h2>
          {place.mark?.manual && (
            <p>{t('manual', { score: place.mark.manual.score, steps: place.mark.asked.steps })}</p>
          )}
          <MarkedQuestion marked={shown} comment={place.mark?.manual?.comment} />
          {fromPerson && (
            <QuestionFromPerson read={fromPerson} sittingId={read.sitting.id} place={place.place} settings={settings} />
          )}
        </section>
      )}
      {fromPerson && <OnWhole read={fromPerson} settings={settings} />}
      <Reveal target="question" when={String(place?.place)} />
    </>
  );
}

function pointsOf(counted: readonly SittingPlace[]) {
  // Each question weighs the same, however many steps its marks have.
  const points = counted.reduce((sum, one) => sum + (earned(one) ?? 0) / (one.mark?.asked.steps ?? 1), 0);
  return { points: Math.round(points * 10) / 10, possible: counted.length, count: counted.length };
}

async function ResultLine({
  place,
  chosen,
  counts,
}: {
  place: SittingPlace;
  chosen: boolean;
  counts: EffectiveQuestion | undefined;
}) {
  const review = await getTranslations('review');
  const t = await getTranslations('sittings');
  const score = earned(place);
  const steps = place.mark?.asked.steps ?? 1;
  const kind = place.spec ? catalogue().questions.get(place.spec.kind)?.text.en.name : t('written');
  return (
    <>
      <Link
        className={learn.way}
        href={`?at=${place.place}`}
        prefetch={false}
        scroll={false}
        aria-current={chosen ? 'true' : undefined}
      >
        {t('look', { place: place.place, kind: kind ?? '' })}
      </Link>
      <span className={ui.code}>
        {score === null || score === undefined ? t('waiting') : t('points', { score, steps })}
        {counts && counts.points !== null && counts.points !== counts.computed && (
          <b>{` · ${review('partCounts', { points: counts.points, outOf: counts.outOf })}`}</b>
        )}
        {place.mark?.answer === null && ` · ${t('unanswered')}`}
      </span>
    </>
  );
}
