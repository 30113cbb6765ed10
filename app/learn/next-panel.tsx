import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import type { Desk } from '@/app/_server/permit';
import { readNext } from '@/app/_server/pool/next';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { startNextPractice } from './actions';

/**
 * What to practise next, why it was chosen, and the way into it; nothing where there is nothing to choose from. Of a case no topic is
 * named: it would hint at what is wrong in it.
 */
export async function NextPanel({ desk, now }: { desk: Desk; now: Date }) {
  const next = await readNext(desk, now);
  if (!next) return null;
  const t = await getTranslations('learn');
  const problems = await getTranslations('problems');
  const topic = catalogue().topics.get(next.topic)?.text.en.name ?? next.topic;
  const kind = catalogue().questions.get(next.task.row.spec?.kind ?? 'judge')?.text.en.name ?? '';
  return (
    <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`} aria-labelledby="next-practice">
      <h2 id="next-practice">{t('nextTitle')}</h2>
      <p className={ui.prose}>
        {next.task.kind === 'case' ? (
          <>
            <b>{t('nextCase')}</b> {t(`nextCaseBecause.${next.reason}`)}
          </>
        ) : (
          <>
            <b>{t('nextQuestion', { kind })}</b> {t(`nextBecause.${next.reason}`, { topic })}
          </>
        )}
      </p>
      <ActForm action={startNextPractice} submit={t('nextStart')} failed={problems('start-failed')}>
        {null}
      </ActForm>
    </section>
  );
}
