import { getTranslations } from 'next-intl/server';
import type { AttemptView } from '@/app/_server/attempt-view';
import type { DebriefView } from '@/app/_server/debrief-view';
import type { ReplayStep } from '@/app/_server/review/replay';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { ItemValue } from '@/app/_ui/item-value';
import ui from '@/app/_ui/ui.module.css';
import { percentOf } from '@/app/learn/cases/[attemptId]/debrief/belief-table';
import { Notes } from '@/app/learn/cases/[attemptId]/debrief/marks';
import { WhatFollows } from '@/app/learn/cases/[attemptId]/debrief/what-follows';
import { FindingText } from '@/app/learn/cases/[attemptId]/findings';
import type { CommentLine } from '@/db/queries/comments';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { commentOnAttempt } from '../../actions';
import { Comments } from '../../comments';
import styles from '../../review.module.css';
import { Called } from './called';
import { ShownValue } from './shown-value';

interface Replayed {
  view: AttemptView;
  /** Undefined while the call is not made. */
  debrief: DebriefView | undefined;
  units: UnitChoice;
  settings: OrganizationSettings;
  comments: readonly CommentLine[];
  /** Whoever looks may write. */
  writes: boolean;
}

/** What was done, act by act, beside what was computed of it. */
export async function Replay({ steps, ...shown }: Replayed & { steps: readonly ReplayStep[] }) {
  const t = await getTranslations('review');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="acts">
      <h2 id="acts">{t('acts')}</h2>
      {steps.length === 0 && <p>{t('noActs')}</p>}
      <ol className={styles.acts}>
        {steps.map((step) => (
          <li key={step.seq} id={`act-${step.seq}`} className={styles.act}>
            <Step step={step} {...shown} />
          </li>
        ))}
      </ol>
    </section>
  );
}

async function Step({ step, ...shown }: Replayed & { step: ReplayStep }) {
  const { view, debrief, settings, comments, writes } = shown;
  const t = await getTranslations('review');
  const about = { attemptId: view.id, seq: String(step.seq) };
  return (
    <>
      <p className={styles.when}>
        <b>{step.seq}</b> <span className={ui.small}>{t('minute', { minute: step.minute })}</span>
      </p>
      <div className={styles.what}>
        <What step={step} {...shown} />
        <Believed belief={step.belief} />
        {debrief && step.notes.length > 0 && step.what.kind !== 'call' && (
          <div className={styles.notes}>
            <h4>{t('points')}</h4>
            <Notes view={debrief} notes={step.notes} />
          </div>
        )}
        <Comments
          comments={comments.filter(({ seq }) => seq === step.seq)}
          settings={settings}
          label={t('onAct', { seq: step.seq })}
          commenting={writes ? { action: commentOnAttempt, about } : undefined}
        />
      </div>
    </>
  );
}

async function What({ step: { what }, view, debrief, units }: Replayed & { step: ReplayStep }) {
  const [t, run, coach] = await Promise.all([
    getTranslations('review'),
    getTranslations('conditionsShort'),
    getTranslations('coach'),
  ]);
  switch (what.kind) {
    case 'reading': {
      const { check, condition, instrument, minutes, items } = what.reading;
      return (
        <>
          <h3>{t('tookReading', { check: check.name, condition: run(condition) })}</h3>
          <p className={ui.small}>{t('hookedUp', { instrument: instrument.name, minutes })}</p>
          <ul className={styles.values}>
            {items.map((item) => (
              <li key={item.quantity}>
                {check.severalQuantities && `${item.label}: `}
                <b>
                  <ShownValue item={item} units={units} />
                </b>
              </li>
            ))}
          </ul>
        </>
      );
    }
    case 'finding': {
      const { reading, item, grade } = what;
      if (!item.finding) return null;
      const name = reading.check.severalQuantities ? item.label : reading.check.name;
      return (
        <>
          <h3>{t('judged', { check: name, condition: run(reading.condition) })}</h3>
          <div className={styles.beside}>
            <div>
              <h4>{t('said')}</h4>
              {item.finding.entered && (
                <p>
                  {t('entered')}{' '}
                  <b>
                    <ItemValue item={item} units={units} />
                  </b>
                </p>
              )}
              <FindingText finding={item.finding} item={item} rig={view.face?.rig} units={units} />
              {item.finding.words === '' && <p className={ui.small}>{t('noWords')}</p>}
            </div>
            {grade && (
              <div>
                <h4>{t('computed')}</h4>
                <WhatFollows
                  item={{ ...item, finding: { ...item.finding, words: '' } }}
                  grade={grade}
                  rig={view.face?.rig}
                  units={units}
                />
              </div>
            )}
          </div>
        </>
      );
    }
    case 'hint':
      return (
        <>
          <h3>{t('askedHint')}</h3>
          <p>
            {what.hint.next
              ? coach('next', { check: what.hint.next.check.name, condition: run(what.hint.next.condition) })
              : coach('hintNothing')}
          </p>
        </>
      );
    case 'call':
      return debrief ? <Called view={debrief} /> : null;
  }
}

async function Believed({ belief }: Pick<ReplayStep, 'belief'>) {
  const [t, area] = await Promise.all([getTranslations('review'), getTranslations('areas')]);
  if (belief.length === 0) return null;
  return (
    <p className={styles.areaShares}>
      <span className={ui.small}>{t('believed')}</span>{' '}
      {belief.map(({ area: id, share }) => t('share', { area: area(id), percent: percentOf(share) })).join(', ')}
    </p>
  );
}
