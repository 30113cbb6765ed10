import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView } from '@/app/_server/attempt-view';
import type { RigChoices } from '@/app/_server/rig-choices';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { callCase } from './actions';
import { AnswerFields } from './answer-fields';
import styles from './case.module.css';

/** The learner's answer: one cause, or two, each with its repair and the check that is to prove it. */
export function CallPanel({ view, choices }: { view: AttemptView; choices: RigChoices }) {
  const t = useTranslations('call');
  if (view.state !== 'open')
    return (
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="call">
        <h2 id="call">{t('title')}</h2>
        <p>{t(view.state === 'over' ? 'over' : 'closed')}</p>
        {view.turn?.tellsAt && <p>{t('toldLater')}</p>}
        {view.intake?.open && <p>{t('toldAfterIntake')}</p>}
        <p>
          <WayOn view={view} />
        </p>
      </section>
    );
  return (
    <section className={ui.panel} aria-labelledby="call">
      <div className={ui.head}>
        <h2 id="call">{t('title')}</h2>
        <span className={ui.small}>{t('once')}</span>
      </div>
      <ActForm className={ui.stack} action={callCase} submit={t('make')} failed={t('failed')}>
        <input type="hidden" name="attemptId" value={view.id} />
        <AnswerFields
          names={{ cause: 'cause', repair: 'repair', proof: 'proof' }}
          labels={{ cause: t('cause'), repair: t('repair'), proof: t('proof') }}
          pick={t('pick')}
          required
          choices={choices}
        />
        <SecondCause choices={choices} />
        <Restoring choices={choices} />
      </ActForm>
    </section>
  );
}

/** To the debrief, or to the turn where there is none, or none yet. */
function WayOn({ view: { id, state, turn, intake } }: { view: AttemptView }) {
  const t = useTranslations('call');
  if (intake?.open || (intake && state === 'over'))
    return (
      <Link className={ui.primary} href={`/learn/intakes/${intake.id}`} prefetch={false}>
        {t('toIntake')}
      </Link>
    );
  const toTurn = turn && (turn.tellsAt || state === 'over');
  return (
    <Link
      className={ui.primary}
      href={toTurn ? `/learn/turns/${turn.id}` : `/learn/cases/${id}/debrief`}
      prefetch={false}
    >
      {t(toTurn ? 'toTurn' : 'toDebrief')}
    </Link>
  );
}

/** The same list in every case: what the readings left to be put right, among what does harm. */
function Restoring({ choices: { restoring } }: { choices: RigChoices }) {
  const t = useTranslations('call');
  return (
    <fieldset className={styles.restoring} aria-describedby="restored-hint">
      <legend className={ui.label}>{t('restored')}</legend>
      <p id="restored-hint" className={ui.small}>
        {t('restoredHint')}
      </p>
      {restoring.map(({ id, name }) => (
        <label key={id} className={styles.step}>
          <input type="checkbox" name="restored" value={id} />
          <span>{name}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** Offered in every case, whether there is a second cause or not. */
function SecondCause({ choices }: { choices: RigChoices }) {
  const t = useTranslations('call');
  return (
    <details className={styles.second}>
      <summary>
        {t('two')} <span className={styles.secondChosen}>{t('twoChosen')}</span>
      </summary>
      <div className={ui.stack}>
        <p className={ui.small}>{t('twoHint')}</p>
        <AnswerFields
          names={{ cause: 'alsoCause', repair: 'alsoRepair', proof: 'alsoProof' }}
          labels={{ cause: t('also.cause'), repair: t('also.repair'), proof: t('also.proof') }}
          pick={t('also.none')}
          required={false}
          choices={choices}
        />
      </div>
    </details>
  );
}
