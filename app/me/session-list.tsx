import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { SessionLine } from '@/db/queries/sessions';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { signOutElsewhere, signOutSession } from './actions';
import { deviceFrom } from './device';
import styles from './me.module.css';

/** Where somebody is signed in, and how to end it. */
export function SessionList({
  sessions,
  ownId,
  settings,
}: {
  sessions: readonly SessionLine[];
  /** The one that this page is read in. */
  ownId: string;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('account');
  const problems = useTranslations('problems');
  return (
    <>
      <ul className={styles.sessions}>
        {sessions.map((session) => {
          const known = deviceFrom(session.userAgent);
          const device = known ? t('device', { ...known }) : t('unknownDevice');
          const own = session.id === ownId;
          return (
            <li key={session.id} className={styles.session}>
              <SessionFacts session={session} device={device} own={own} settings={settings} />
              {!own && (
                <ActForm
                  action={signOutSession}
                  submit={t('signOutThere', { device })}
                  failed={problems('no-answer')}
                  quiet
                >
                  <input type="hidden" name="sessionId" value={session.id} />
                </ActForm>
              )}
            </li>
          );
        })}
      </ul>
      {sessions.length > 1 && (
        <ActForm action={signOutElsewhere} submit={t('signOutElsewhere')} failed={problems('no-answer')} quiet>
          {null}
        </ActForm>
      )}
    </>
  );
}

function SessionFacts({
  session,
  device,
  own,
  settings,
}: {
  session: SessionLine;
  device: string;
  own: boolean;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('account');
  const { ipAddress, createdAt, updatedAt } = session;
  return (
    <div>
      <p>
        <strong>{device}</strong>
        {own && <span className={styles.own}>{t('thisOne')}</span>}
      </p>
      <p className={ui.small}>
        {t('sessionTimes', { signedIn: shownTime(createdAt, settings), lastUsed: shownDate(updatedAt, settings) })}
        {ipAddress && ` ${t('sessionFrom', { address: ipAddress })}`}
      </p>
    </div>
  );
}
