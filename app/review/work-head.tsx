import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { Reviewed } from '@/app/_server/review/reviewed';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './review.module.css';
import { useWhoWords } from './who-words';

/** Whose work it is and where it belongs, and who hears of what is written here. */
export function WorkHead({ work, title, settings }: { work: Reviewed; title: string; settings: OrganizationSettings }) {
  const t = useTranslations('review');
  const whose = useWhoWords();
  const { who, assignment, turn, finishedAt, demo, told } = work;
  // A time would tell who it is to somebody who saw them hand in.
  const time = 'handle' in who ? undefined : finishedAt;
  return (
    <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`} aria-labelledby="work">
      <p>
        <Link className={styles.way} href="/review" prefetch={false}>
          {t('back')}
        </Link>
      </p>
      <h1 id="work">{t('workOf', { title, who: whose(who) })}</h1>
      <p className={ui.small}>
        {[
          assignment ? t('atAssignment', { title: assignment.title, number: turn?.number ?? 1 }) : t('practice'),
          ...(time ? [t('finished', { at: shownTime(time, settings) })] : []),
          ...(demo ? [t('demo')] : []),
        ].join(' · ')}
      </p>
      {'handle' in who && <p className={ui.notice}>{t('anonymousRule')}</p>}
      {!finishedAt && <p className={ui.notice}>{t('stillOpen')}</p>}
      <p className={ui.small}>{t(told ? 'toldAtOnce' : 'toldLater')}</p>
    </section>
  );
}
