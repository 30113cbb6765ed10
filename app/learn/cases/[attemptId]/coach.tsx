import Link from 'next/link';
import { useFormatter, useTranslations } from 'next-intl';
import type { AttemptView } from '@/app/_server/attempt-view';
import type { HintView } from '@/app/_server/hint-views';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { askForHint } from './ask-for-hint';

/** In coached practice: the check that would tell most now, when it is asked for. */
export function Coach({ view }: { view: AttemptView }) {
  const t = useTranslations('coach');
  const standing = view.hints.find(({ stands }) => stands);
  return (
    <section className={ui.panel} aria-labelledby="coach">
      <div className={ui.head}>
        <h2 id="coach" tabIndex={-1}>
          {t('title')}
        </h2>
        <span className={ui.small}>{t('asked', { count: view.hints.length })}</span>
      </div>
      {standing ? <Hint attemptId={view.id} hint={standing} /> : <AskForHint attemptId={view.id} />}
    </section>
  );
}

function AskForHint({ attemptId }: { attemptId: string }) {
  const t = useTranslations('coach');
  return (
    <ActForm className={ui.stack} action={askForHint} submit={t('ask')} failed={t('failed')}>
      <input type="hidden" name="attemptId" value={attemptId} />
      <p>{t('body')}</p>
    </ActForm>
  );
}

/** What is hinted at, and why. It stands until something is read. */
function Hint({ attemptId, hint: { next } }: { attemptId: string; hint: HintView }) {
  const t = useTranslations('coach');
  const run = useTranslations('conditionsShort');
  if (!next) return <p>{t('nothing')}</p>;
  const { check, condition, instrument, why } = next;
  return (
    <div className={ui.stack}>
      <h3>{t('next', { check: check.name, condition: run(condition) })}</h3>
      <dl className={ui.facts}>
        <dt>{t('instrument')}</dt>
        <dd>{instrument}</dd>
        <dt>{t('minutes')}</dt>
        <dd>{t('minutesValue', { minutes: why.minutes })}</dd>
      </dl>
      <Why why={why} />
      <Link
        className={ui.primary}
        href={`/learn/cases/${attemptId}?${new URLSearchParams({ check: check.id })}`}
        scroll={false}
        prefetch={false}
      >
        {t('hookUp')}
      </Link>
    </div>
  );
}

function Why({ why }: { why: NonNullable<HintView['next']>['why'] }) {
  const t = useTranslations('coach');
  const area = useTranslations('areas');
  const { list } = useFormatter();
  const { settles, minutes, areas } = why;
  const named = list(areas.map((id) => area(id)));
  return (
    <p>
      {t('why', { settles, minutes, perMinute: settles / minutes })}{' '}
      {areas.length > 0 && t(areas.length > 1 ? 'apart' : 'within', { areas: named })}
    </p>
  );
}
