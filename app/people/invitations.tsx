import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { rolesToGive } from '@/app/_server/people/roles-given';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { type InvitationLine, listOpenInvitations } from '@/db/queries/invitations';
import { parseRoles } from '@/lib/accounts/roles';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { invitePerson, withdrawInvitation } from './actions';
import { ClassChoice } from './class-choice';
import { RoleBoxes } from './role-boxes';

/** More open invitations than anybody keeps track of. */
const LISTED = 100;

/** Inviting by link, and the invitations that are still open. */
export async function Invitations({ permit, settings }: { permit: SignedInPermit; settings: OrganizationSettings }) {
  const organizationId = organizationOf(permit);
  const open = await listOpenInvitations(database(), organizationId, new Date(), LISTED);
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="invite">
      <h2 id="invite">{t('inviteTitle')}</h2>
      <p className={ui.prose}>{t('inviteBody')}</p>
      <ActForm
        className={ui.stack}
        action={invitePerson}
        submit={t('invite')}
        failed={problems('no-answer')}
        done={t('invited')}
        quiet
      >
        <Field label={t('email')} name="email" type="email" maxLength={200} autoComplete="off" />
        <RoleBoxes choices={rolesToGive(permit)} held={['learner']} />
        <ClassChoice organizationId={organizationId} />
      </ActForm>
      {open.length > 0 && (
        <>
          <h3>{t('openTitle')}</h3>
          <ul className={lines.lines}>
            {open.map((line) => (
              <Open key={line.id} line={line} settings={settings} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

async function Open({
  line: { id, role, email, className, expiresAt },
  settings,
}: {
  line: InvitationLine;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('people');
  const roles = await getTranslations('roles');
  const problems = await getTranslations('problems');
  const ends = shownTime(expiresAt, settings);
  const names = parseRoles(role).map((one) => roles(one));
  return (
    <li>
      <span>
        {t('invitation', { roles: names.join(', '), ends })} {className && t('forClass', { name: className })}{' '}
        {email && t('sentTo', { email })}
      </span>
      <ActForm action={withdrawInvitation} submit={t('withdraw', { ends })} failed={problems('no-answer')} quiet>
        <input type="hidden" name="invitationId" value={id} />
      </ActForm>
    </li>
  );
}
