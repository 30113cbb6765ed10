import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { ReadSitting, SittingPlace } from '@/app/_server/sittings/read-sitting';
import { ActForm } from '@/app/_ui/act-form';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { QuestionFields } from '@/app/_ui/questions/question-fields';
import { Reveal } from '@/app/_ui/reveal';
import ui from '@/app/_ui/ui.module.css';
import learn from '../../learn.module.css';
import { flagQuestion, handInSitting, saveAnswer } from './actions';
import { questionView } from './ask';
import { SavingForm } from './saving-form';
import styles from './sitting.module.css';

/** One question of a check. What is chosen is saved at once; nothing is told. */
export async function CheckQuestion({
  read,
  place,
  units,
  turnId,
}: {
  read: ReadSitting;
  place: SittingPlace;
  units: UnitChoice;
  /** Of the turn that it is part of, with which it is handed in. */
  turnId: string | undefined;
}) {
  const t = await getTranslations('sittings');
  const problems = await getTranslations('problems');
  const { id } = read.sitting;
  const near = (at: number) => read.places.find((one) => one.place === at);
  const [before, after] = [near(place.place - 1), near(place.place + 1)];
  return (
    <>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="question">
        <h2 id="question" tabIndex={-1}>
          {t('questionOf', { place: place.place, count: read.places.length })}
        </h2>
        <SavingForm
          key={`${place.place} ${place.askedAt.getTime()}`}
          className={ui.stack}
          action={saveAnswer}
          words={{ submit: t('save'), saving: t('saving'), saved: t('saved'), notSaved: t('notSaved') }}
        >
          <input type="hidden" name="sittingId" value={id} />
          <input type="hidden" name="place" value={place.place} />
          <QuestionFields view={await questionView(place, units)} given={place.answer} />
        </SavingForm>
        <div className={styles.ways}>
          <ActForm
            action={flagQuestion}
            submit={t(place.flagged ? 'unflag' : 'flag')}
            failed={problems('answer-failed')}
            quiet
          >
            <input type="hidden" name="sittingId" value={id} />
            <input type="hidden" name="place" value={place.place} />
            <input type="hidden" name="flagged" value={place.flagged ? 'no' : 'yes'} />
          </ActForm>
          {before && (
            <Link className={learn.way} href={`?at=${before.place}`} prefetch={false}>
              {t('before')}
            </Link>
          )}
          {after && (
            <Link className={learn.way} href={`?at=${after.place}`} prefetch={false}>
              {t('after')}
            </Link>
          )}
        </div>
        <Reveal target="question" when={String(place.place)} />
      </section>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="hand-in">
        <h2 id="hand-in">{t('handInTitle')}</h2>
        <StillOpen read={read} />
        {turnId === undefined ? (
          <>
            <p>{t('handInSure')}</p>
            <ActForm action={handInSitting} submit={t('handIn')} failed={problems('answer-failed')} quiet>
              <input type="hidden" name="sittingId" value={id} />
            </ActForm>
          </>
        ) : (
          <p>{t('handInWithTurn')}</p>
        )}
      </section>
    </>
  );
}

/** What is not answered, and what one meant to come back to. */
async function StillOpen({ read: { places } }: { read: ReadSitting }) {
  const t = await getTranslations('sittings');
  const open = places.filter(({ answer }) => !answer).map(({ place }) => place);
  const flagged = places.filter((one) => one.flagged).map(({ place }) => place);
  return (
    <>
      <p>{open.length === 0 ? t('handInAll') : t('handInOpen', { count: open.length, places: open.join(', ') })}</p>
      {flagged.length > 0 && <p>{t('handInFlagged', { count: flagged.length, places: flagged.join(', ') })}</p>}
    </>
  );
}
