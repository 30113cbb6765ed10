import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { Likeness } from '@/app/_server/alike-causes';
import type { DebriefView } from '@/app/_server/debrief-view';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { StartRandom } from '../../../start-random';
import styles from './debrief.module.css';
import { startAlike } from './start-alike';

/** Where to go from here: a case like this one, one that only looks like it, any, or the topics. */
export function NextCases({ view: { attempt, topics, hasFamily } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const { rig, mayBeTwo } = attempt.face ?? {};
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="next">
      <h2 id="next">{t('next')}</h2>
      {topics.length > 0 && (
        <p>
          {t('topics')}{' '}
          {topics.map(({ id, name }, index) => (
            <span key={id}>
              {index > 0 && ', '}
              <Link href={`/learn/topics#${id}`} prefetch={false}>
                {name}
              </Link>
            </span>
          ))}
          .
        </p>
      )}
      {attempt.face && (
        <>
          {hasFamily && <StartAlike attemptId={attempt.id} likeness="family" />}
          <StartAlike attemptId={attempt.id} likeness="look-alike" />
        </>
      )}
      <div className={styles.anyCase}>
        <p className={ui.small}>{t('nextBody')}</p>
        <StartRandom label={t('nextCase')} rig={rig?.id} level={mayBeTwo ? 'hardest' : 'usual'} />
      </div>
      <p>
        <Link href={`/learn/cases/${attempt.id}`} prefetch={false}>
          {t('toWorkOrder')}
        </Link>
      </p>
    </section>
  );
}

function StartAlike({ attemptId, likeness }: { attemptId: string; likeness: Likeness }) {
  const t = useTranslations('debrief');
  const problems = useTranslations('problems');
  return (
    <div className={styles.alike}>
      <p className={ui.small}>{t(`alikeBody.${likeness}`)}</p>
      <ActForm action={startAlike} submit={t(`alike.${likeness}`)} failed={problems('start-failed')}>
        <input type="hidden" name="attemptId" value={attemptId} />
        <input type="hidden" name="likeness" value={likeness} />
      </ActForm>
    </div>
  );
}
