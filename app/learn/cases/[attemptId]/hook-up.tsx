import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { AttemptView, CaseFace } from '@/app/_server/attempt-view';
import type { CheckChoice } from '@/app/_server/rig-choices';
import { ActForm } from '@/app/_ui/act-form';
import { Cautions } from '@/app/_ui/cautions';
import ui from '@/app/_ui/ui.module.css';
import { takeReading } from './actions';
import styles from './case.module.css';
import { CheckList } from './check-list';
import type { Selection } from './selection';

/** Choose a check, hook an instrument up, say how the engine is to run, take the reading. */
export function HookUp({ view, face, selection }: { view: AttemptView; face: CaseFace; selection: Selection }) {
  const t = useTranslations('hookUp');
  const { check, port } = selection;
  const atPort = face.rig.ports.find(({ id }) => id === port);
  const listed = face.choices.checks.filter(({ ports }) => port === undefined || ports.includes(port));
  return (
    <section className={ui.panel} aria-labelledby="hook-up">
      <div className={ui.head}>
        <h2 id="hook-up" tabIndex={-1}>
          {t('title')}
        </h2>
        <span className={ui.small}>
          {atPort ? t('atPort', { id: atPort.id, name: atPort.text.en }) : check ? null : t('choose')}
        </span>
      </div>
      <CheckList attemptId={view.id} checks={listed} chosen={check?.id} port={port} />
      {port !== undefined && (
        <p className={styles.all}>
          <Link href={`/learn/cases/${view.id}`} scroll={false} prefetch={false}>
            {t('all')}
          </Link>
        </p>
      )}
      {check && <HookUpForm key={`${check.id} ${view.destroyed.size}`} view={view} face={face} check={check} />}
    </section>
  );
}

function HookUpForm({ view, face, check }: { view: AttemptView; face: CaseFace; check: CheckChoice }) {
  const t = useTranslations('hookUp');
  const run = useTranslations('conditions');
  const ports = face.rig.ports.filter(({ id }) => check.ports.includes(id));
  const usable = check.instruments.filter(({ id }) => !view.destroyed.has(id));
  return (
    <div className={styles.hook}>
      <h3 id="hook-form" tabIndex={-1}>
        {check.name}
      </h3>
      <p>{check.how}</p>
      <Mistakes texts={check.mistakes} />
      <p className={styles.portLine}>
        <span className={ui.label}>{t('port')}</span>{' '}
        {ports.map(({ id, text }) => t('ports', { id, name: text.en })).join(', ')}
      </p>
      <ActForm className={ui.stack} action={takeReading} submit={t('take')} failed={t('failed')}>
        <input type="hidden" name="attemptId" value={view.id} />
        <input type="hidden" name="check" value={check.id} />
        <div className={styles.pair}>
          <label className={ui.field}>
            <span>{t('instrument')}</span>
            <select
              name="instrument"
              required
              defaultValue={check.instruments.length === 1 ? (usable[0]?.id ?? '') : ''}
            >
              <option value="" disabled>
                {t('pick')}
              </option>
              {check.instruments.map(({ id, name }) => (
                <option key={id} value={id} disabled={view.destroyed.has(id)}>
                  {view.destroyed.has(id) ? t('lost', { name }) : name}
                </option>
              ))}
            </select>
          </label>
          <label className={ui.field}>
            <span>{t('condition')}</span>
            <select name="condition" required defaultValue={check.conditions.length === 1 ? check.conditions[0] : ''}>
              <option value="" disabled>
                {t('pick')}
              </option>
              {check.conditions.map((id) => (
                <option key={id} value={id}>
                  {run(id)}
                </option>
              ))}
            </select>
          </label>
        </div>
        <Cautions title={t('minding')} ids={check.cautions} />
      </ActForm>
    </div>
  );
}

/** What goes wrong with the check in practice. Folded, as one reads it once. */
function Mistakes({ texts }: { texts: readonly string[] }) {
  const t = useTranslations('hookUp');
  if (texts.length === 0) return null;
  return (
    <details className={styles.mistakes}>
      <summary>{t('mistakes')}</summary>
      <ul>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </details>
  );
}
