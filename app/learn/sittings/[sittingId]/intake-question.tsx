import { getTranslations } from 'next-intl/server';
import type { SittingPlace } from '@/app/_server/sittings/read-sitting';
import { ActForm } from '@/app/_ui/act-form';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { QuestionFields } from '@/app/_ui/questions/question-fields';
import ui from '@/app/_ui/ui.module.css';
import { goOnWithIntake } from '../../intakes/[intakeId]/actions';
import { saveAnswer } from './actions';
import { questionView } from './ask';
import { SavingForm } from './saving-form';

/** The question of a new-hire check that is open. What is chosen is saved at once; nothing is told, and nobody comes back to it. */
export async function IntakeQuestion({
  place,
  units,
  intakeId,
}: {
  place: SittingPlace;
  units: UnitChoice;
  intakeId: string;
}) {
  const t = await getTranslations('sittings');
  const intakes = await getTranslations('intakes');
  const problems = await getTranslations('problems');
  if (place.mark)
    return <GoOn intakeId={intakeId} words={{ submit: intakes('next'), failed: problems('no-answer') }} />;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="question">
      <h2 id="question" tabIndex={-1}>
        {t('question', { place: place.place })}
      </h2>
      <SavingForm
        key={`${place.place} ${place.askedAt.getTime()}`}
        className={ui.stack}
        action={saveAnswer}
        words={{ submit: t('save'), saving: t('saving'), saved: t('saved'), notSaved: t('notSaved') }}
      >
        <input type="hidden" name="sittingId" value={place.sittingId} />
        <input type="hidden" name="place" value={place.place} />
        <QuestionFields view={await questionView(place, units)} given={place.answer} />
      </SavingForm>
      <p className={ui.small}>{intakes(place.answer ? 'leaveAnswered' : 'leaveOpen')}</p>
      <GoOn
        intakeId={intakeId}
        leave={place.place}
        words={{ submit: intakes('next'), failed: problems('no-answer') }}
      />
    </section>
  );
}

function GoOn({
  intakeId,
  leave,
  words: { submit, failed },
}: {
  intakeId: string;
  /** The place that is left. */
  leave?: number;
  words: { submit: string; failed: string };
}) {
  return (
    <ActForm action={goOnWithIntake} submit={submit} failed={failed} quiet>
      <input type="hidden" name="intakeId" value={intakeId} />
      {leave !== undefined && <input type="hidden" name="leave" value={leave} />}
    </ActForm>
  );
}
