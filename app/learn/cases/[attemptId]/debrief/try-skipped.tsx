import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import { checkName } from '@/app/_server/route-views';
import type { Skipped } from '@/app/_server/skipped-checks';
import { formatHookUp } from '@/app/_server/try-check';
import type { UnitChoice } from '@/app/_ui/display-choices';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';
import { TrialResult } from './trial-result';

/** The checks that would have told most where something else was done, each to be tried now. */
export function TrySkipped({ view, units }: { view: DebriefView; units: UnitChoice }) {
  const t = useTranslations('debrief');
  const { skipped, trial } = view;
  if (skipped.length === 0 && !trial) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="try">
      <div>
        <h2 id="try" tabIndex={-1}>
          {t('try')}
        </h2>
        <p className={ui.small}>{t('tryHint')}</p>
      </div>
      {skipped.length > 0 && (
        <ul className={styles.tries}>
          {skipped.map((one) => (
            <li key={formatHookUp(one.step)}>
              <TryLink view={view} skipped={one} />
            </li>
          ))}
        </ul>
      )}
      {trial && 'error' in trial && (
        <p className={ui.notice} role="status">
          {t('tryUnknown')}
        </p>
      )}
      {trial && !('error' in trial) && <TrialResult trial={trial} view={view} units={units} />}
    </section>
  );
}

function TryLink({
  view: { attempt, trial, repaired },
  skipped: { step, insteadOf },
}: {
  view: DebriefView;
  skipped: Skipped;
}) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const taken = attempt.readings.find(({ seq }) => seq === insteadOf);
  const shown = trial && !('error' in trial) ? trial.reading : undefined;
  const current = shown?.check.id === step.check && shown.condition === step.condition;
  const query = new URLSearchParams({ try: formatHookUp(step), ...(repaired && { at: repaired.condition }) });
  return (
    <Link
      className={styles.tryLink}
      href={`/learn/cases/${attempt.id}/debrief?${query}#try`}
      prefetch={false}
      aria-current={current ? 'true' : undefined}
    >
      <b>{`${checkName(step.check)}, ${run(step.condition)}`}</b>
      <span className={ui.small}>
        {taken
          ? t('tryInstead', { minutes: step.minutes, check: taken.check.name, condition: run(taken.condition) })
          : t('tryAfterAll', { minutes: step.minutes })}
      </span>
    </Link>
  );
}
