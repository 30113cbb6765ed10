import { getTranslations } from 'next-intl/server';
import { env } from '@/app/_server/env';
import { settingsFor } from '@/app/_server/organization-settings';
import type { Session } from '@/app/_server/session';
import { ActForm } from '@/app/_ui/act-form';
import styles from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { Class } from '@/db/queries/classes';
import { formatJoinCode } from '@/lib/accounts/join-code';
import { closeJoinCode, makeJoinCode } from '../actions';

/** The code that lets people join by themselves, large enough for a wall. */
export async function JoinCode({
  session,
  found: { id, joinCode, joinCodeEndsAt },
}: {
  session: Session;
  found: Class;
}) {
  const t = await getTranslations('classes');
  const problems = await getTranslations('problems');
  const settings = await settingsFor(session);
  const open = joinCode && joinCodeEndsAt && joinCodeEndsAt > new Date();
  const hidden = <input type="hidden" name="classId" value={id} />;
  return (
    <section className={`${ui.panel} ${ui.stack} ${open ? styles.poster : styles.onScreen}`} aria-labelledby="join">
      <h2 id="join">{t('joinTitle')}</h2>
      {open ? (
        <>
          <p className={styles.joinCode}>{formatJoinCode(joinCode)}</p>
          <p className={ui.prose}>
            {t('joinBody', {
              address: `${env.FAULTWRIGHT_ORIGIN}/join`,
              code: formatJoinCode(joinCode),
              ends: shownTime(joinCodeEndsAt, settings),
            })}
          </p>
          <p className={`${ui.small} ${styles.onScreen}`}>{t('joinCare')}</p>
        </>
      ) : (
        <p className={ui.prose}>{t('joinClosed')}</p>
      )}
      <div className={`${styles.row} ${styles.onScreen}`}>
        <ActForm
          action={makeJoinCode}
          submit={open ? t('joinNew') : t('joinMake')}
          failed={problems('no-answer')}
          quiet
        >
          {hidden}
        </ActForm>
        {open && (
          <ActForm action={closeJoinCode} submit={t('joinClose')} failed={problems('no-answer')} quiet>
            {hidden}
          </ActForm>
        )}
      </div>
    </section>
  );
}
