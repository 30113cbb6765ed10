import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import type { VersionFilter } from '@/db/queries/written-questions';
import { type VersionState, versionStates } from '@/db/schema/written-questions';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { addressOf } from './parse-filter';
import styles from './questions.module.css';

/** Looks for questions by title, topic and form; the state that was chosen stays. */
export function QuestionFilter({
  filter: { state, topic, form, search },
  topics,
}: {
  filter: VersionFilter;
  topics: readonly { id: string; name: string }[];
}) {
  const t = useTranslations('written');
  return (
    <search>
      <form className={styles.filter} method="get" action="/questions">
        {state && <input type="hidden" name="state" value={state} />}
        <Field
          label={t('search')}
          name="search"
          type="search"
          defaultValue={search}
          maxLength={80}
          autoComplete="off"
        />
        <label className={ui.field}>
          <span>{t('topic')}</span>
          <select name="topic" defaultValue={topic ?? ''}>
            <option value="">{t('anyTopic')}</option>
            {topics.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className={ui.field}>
          <span>{t('form')}</span>
          <select name="form" defaultValue={form ?? ''}>
            <option value="">{t('anyForm')}</option>
            {writtenForms.map((one) => (
              <option key={one} value={one}>
                {t(`forms.${one}`)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit">{t('find')}</button>
      </form>
    </search>
  );
}

/** The states, with how many questions are in each. */
export function StateChoice({
  filter,
  counts,
}: {
  filter: VersionFilter;
  counts: Partial<Record<VersionState, number>>;
}) {
  const t = useTranslations('written');
  const all = versionStates.reduce((sum, state) => sum + (counts[state] ?? 0), 0);
  const choices = [
    { state: undefined, name: t('all'), count: all },
    ...versionStates.map((state) => ({ state, name: t(`states.${state}`), count: counts[state] ?? 0 })),
  ];
  return (
    <nav className={styles.states} aria-label={t('statesLabel')}>
      {choices.map(({ state, name, count }) => (
        <Link
          key={name}
          href={addressOf({ ...filter, state })}
          prefetch={false}
          aria-current={state === filter.state ? 'page' : undefined}
        >
          {t('allCount', { name, count })}
        </Link>
      ))}
    </nav>
  );
}
