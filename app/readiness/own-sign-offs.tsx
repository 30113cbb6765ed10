import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { readSettings } from '@/app/_server/organization-settings';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listNames } from '@/db/queries/names';
import { listSignOffs, type StoredSignOff } from '@/db/queries/sign-offs';
import styles from './readiness.module.css';

/** As many as one looks back over. */
const LISTED = 20;

/** What somebody was signed off for, for themselves to see: who answers for it, until when, and whether it was taken back. */
export async function OwnSignOffs({ learnerId, organizationId }: { learnerId: string; organizationId: string }) {
  const signOffs = await listSignOffs(database(), { learnerId, organizationId }, LISTED);
  const signers = signOffs.map(({ signedBy }) => signedBy);
  const names = new Map((await listNames(database(), organizationId, signers)).map(({ id, name }) => [id, name]));
  const t = await getTranslations('readiness.own');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="signed-off">
      <h2 id="signed-off">{t('title')}</h2>
      {signOffs.length === 0 && <p>{t('none')}</p>}
      <ul className={styles.lines}>
        {signOffs.map((one) => (
          <li key={one.id}>
            <Line signOff={one} by={names.get(one.signedBy)} organizationId={organizationId} />
          </li>
        ))}
      </ul>
    </section>
  );
}

async function Line({
  signOff: { profile, signedAt, endsAt, takenBackAt, takenBackReason },
  by,
  organizationId,
}: {
  signOff: StoredSignOff;
  by: string | undefined;
  organizationId: string;
}) {
  const t = await getTranslations('readiness.own');
  const report = await getTranslations('readiness.report');
  const settings = await readSettings(organizationId);
  const [role, until] = [profile.text.en.name, shownDate(endsAt, settings)];
  if (takenBackAt)
    return t('takenBack', { role, date: shownDate(takenBackAt, settings), reason: takenBackReason ?? '' });
  if (endsAt <= new Date()) return t('ended', { role, until });
  return t('line', { role, by: by ?? report('erased'), date: shownDate(signedAt, settings), until });
}
