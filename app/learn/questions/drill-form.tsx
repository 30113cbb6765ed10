import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import type { Named } from '../start-random';
import { startDrill } from './actions';

/** A drill on a topic of one's choice. */
export function DrillForm({ topics }: { topics: readonly Named[] }) {
  const t = useTranslations('sittings');
  const problems = useTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="drill">
      <h2 id="drill">{t('drillTitle')}</h2>
      <p>{t('drillBody')}</p>
      <ActForm className={ui.stack} action={startDrill} submit={t('drill')} failed={problems('start-failed')}>
        <label className={ui.field}>
          <span>{t('topic')}</span>
          <select name="topic">
            {topics.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </ActForm>
    </section>
  );
}
