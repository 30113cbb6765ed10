import { getTranslations } from 'next-intl/server';
import type { ReadSitting, SittingPlace } from '@/app/_server/sittings/read-sitting';
import { ActForm } from '@/app/_ui/act-form';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import { QuestionFields } from '@/app/_ui/questions/question-fields';
import { Reveal } from '@/app/_ui/reveal';
import ui from '@/app/_ui/ui.module.css';
import { answerQuestion, handInSitting, nextQuestion } from './actions';
import { earned, placeMarked, questionView } from './ask';
import { EnterHere } from './enter-here';
import styles from './sitting.module.css';

/** The last question of a drill or a review: asked, or marked with a way on. */
export async function DrillQuestion({
  read,
  place,
  units,
}: {
  read: ReadSitting;
  place: SittingPlace;
  units: UnitChoice;
}) {
  const t = await getTranslations('sittings');
  const problems = await getTranslations('problems');
  const marked = placeMarked(place, units);
  const sittingId = read.sitting.id;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="question">
      <div className={ui.head}>
        <h2 id="question" tabIndex={-1}>
          {t('question', { place: place.place })}
        </h2>
        <span className={ui.small}>{t('soFar', soFar(read))}</span>
      </div>
      {marked ? (
        <>
          <MarkedQuestion marked={marked} comment={place.mark?.manual?.comment} />
          <EnterHere>
            <ActForm
              key={`next ${place.place}`}
              action={nextQuestion}
              submit={t('next')}
              failed={problems('answer-failed')}
            >
              <input type="hidden" name="sittingId" value={sittingId} />
            </ActForm>
          </EnterHere>
        </>
      ) : (
        <ActForm
          key={`answer ${place.place}`}
          className={ui.stack}
          action={answerQuestion}
          submit={t('answer')}
          failed={problems('answer-failed')}
        >
          <input type="hidden" name="sittingId" value={sittingId} />
          <input type="hidden" name="place" value={place.place} />
          <QuestionFields view={await questionView(place, units)} given={place.answer} />
        </ActForm>
      )}
      <div className={styles.stop}>
        <ActForm action={handInSitting} submit={t('stop')} failed={problems('answer-failed')} quiet>
          <input type="hidden" name="sittingId" value={sittingId} />
        </ActForm>
      </div>
      <Reveal target="question" when={`${place.place} ${marked !== undefined}`} />
    </section>
  );
}

function soFar({ places }: ReadSitting): { right: number; marked: number } {
  const marked = places.filter((place) => typeof earned(place) === 'number');
  return { right: marked.filter((place) => earned(place) === place.mark?.asked.steps).length, marked: marked.length };
}
