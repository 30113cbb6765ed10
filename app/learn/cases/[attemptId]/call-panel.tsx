import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView } from '@/app/_server/attempt-view';
import type { RigChoices } from '@/app/_server/rig-choices';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { callCase } from './actions';

/** The learner's answer: cause, repair, and the check that is to prove it. The lists are the same in every case. */
export function CallPanel({ view, choices }: { view: AttemptView; choices: RigChoices }) {
  const t = useTranslations('call');
  const run = useTranslations('conditionsShort');
  if (view.state !== 'open')
    return (
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="call">
        <h2 id="call">{t('title')}</h2>
        <p>{t('closed')}</p>
        <p>
          <Link className={ui.primary} href={`/learn/cases/${view.id}/debrief`} prefetch={false}>
            {t('toDebrief')}
          </Link>
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
        <Choose name="cause" label={t('cause')} pick={t('pick')}>
          {choices.causes.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choose>
        <Choose name="repair" label={t('repair')} pick={t('pick')}>
          {choices.repairs.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choose>
        <Choose name="proof" label={t('proof')} pick={t('pick')}>
          {choices.checks.map(({ id, name, proofConditions }) => (
            <optgroup key={id} label={name}>
              {proofConditions.map((condition) => (
                <option key={condition} value={`${id}|${condition}`}>
                  {`${name}, ${run(condition)}`}
                </option>
              ))}
            </optgroup>
          ))}
        </Choose>
      </ActForm>
    </section>
  );
}

function Choose({
  name,
  label,
  pick,
  children,
}: {
  name: string;
  label: string;
  pick: string;
  children: React.ReactNode;
}) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <select name={name} required defaultValue="">
        <option value="" disabled>
          {pick}
        </option>
        {children}
      </select>
    </label>
  );
}
