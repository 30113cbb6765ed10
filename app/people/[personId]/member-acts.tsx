import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import type { NamedMember } from '@/app/_server/people/change-member';
import { rolesToGive } from '@/app/_server/people/roles-given';
import type { SignedInPermit } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import { can } from '@/lib/accounts/can';
import type { Action } from '@/lib/accounts/permissions';
import { parseRoles } from '@/lib/accounts/roles';
import { takesMail } from '@/lib/accounts/sign-in-name';
import styles from '../people.module.css';
import { RoleBoxes } from '../role-boxes';
import { deactivatePerson, makeResetLink, reactivatePerson, renamePerson, setPin, setRoles } from './actions';

/** What whoever looks may do about a member; nothing where there is nothing. */
export async function MemberActs({ permit, person }: { permit: SignedInPermit; person: NamedMember }) {
  const may = (action: Action) => can(permit.session.actor, action, permit.resource);
  const self = person.userId === permit.session.actor.personId;
  const t = await getTranslations('people');
  return (
    <>
      {permit.resource.kind === 'member' && permit.resource.ownSignIn && <p className={ui.notice}>{t('ownSignIn')}</p>}
      <div className={styles.acts}>
        {may('member.set-pin') && !takesMail(person.address) && <PinForm person={person} />}
        {may('member.make-reset-link') && <ResetForm person={person} />}
        {may('member.rename') && <NameForm person={person} />}
        {may('member.set-roles') && <RolesForm permit={permit} person={person} />}
        {may('member.deactivate') && !self && <WayInForm person={person} />}
        <More
          personId={person.userId}
          exports={may('member.export')}
          merges={may('member.merge')}
          erases={may('member.erase') && !self}
        />
      </div>
    </>
  );
}

async function PinForm({ person: { userId } }: { person: NamedMember }) {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="pin">
      <h2 id="pin">{t('pinTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={setPin}
        submit={t('setPin')}
        failed={problems('no-answer')}
        done={t('pinSet')}
        clears
        quiet
      >
        <input type="hidden" name="personId" value={userId} />
        <p className={ui.small}>{t('pinBody')}</p>
        <Field label={t('pin')} rule={t('pinRule')} name="pin" inputMode="numeric" maxLength={6} autoComplete="off" />
      </ActForm>
    </section>
  );
}

async function ResetForm({ person: { userId } }: { person: NamedMember }) {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="reset">
      <h2 id="reset">{t('resetTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={makeResetLink}
        submit={t('reset')}
        failed={problems('no-answer')}
        done={t('resetMade')}
        quiet
      >
        <input type="hidden" name="personId" value={userId} />
        <p className={ui.small}>{t('resetBody')}</p>
      </ActForm>
    </section>
  );
}

async function NameForm({ person: { userId, name } }: { person: NamedMember }) {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="rename">
      <h2 id="rename">{t('renameTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={renamePerson}
        submit={t('rename')}
        failed={problems('no-answer')}
        done={t('renamed')}
        quiet
      >
        <input type="hidden" name="personId" value={userId} />
        <Field label={t('name')} name="name" defaultValue={name} required maxLength={LONGEST_NAME} autoComplete="off" />
      </ActForm>
    </section>
  );
}

async function RolesForm({ permit, person: { userId, role } }: { permit: SignedInPermit; person: NamedMember }) {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="roles">
      <h2 id="roles">{t('rolesTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={setRoles}
        submit={t('setRoles')}
        failed={problems('no-answer')}
        done={t('rolesSet')}
        quiet
      >
        <input type="hidden" name="personId" value={userId} />
        <RoleBoxes choices={rolesToGive(permit)} held={parseRoles(role)} />
        <p className={ui.small}>{t('rolesBody')}</p>
      </ActForm>
    </section>
  );
}

async function WayInForm({ person: { userId, deactivatedAt } }: { person: NamedMember }) {
  const t = await getTranslations('people');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="way-in">
      <h2 id="way-in">{t('deactivateTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={deactivatedAt ? reactivatePerson : deactivatePerson}
        submit={deactivatedAt ? t('reactivate') : t('deactivate')}
        failed={problems('no-answer')}
        quiet
      >
        <input type="hidden" name="personId" value={userId} />
        <p className={ui.small}>{t('deactivateBody')}</p>
      </ActForm>
    </section>
  );
}

interface MoreProps {
  personId: string;
  exports: boolean;
  merges: boolean;
  erases: boolean;
}

async function More({ personId, exports, merges, erases }: MoreProps) {
  const t = await getTranslations('people');
  if (!exports && !merges && !erases) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="more">
      <h2 id="more">{t('moreTitle')}</h2>
      {exports && (
        <p>
          <a className={styles.way} href={`/people/${personId}/export/json`} download>
            {t('exportJson')}
          </a>
          <br />
          <a className={styles.way} href={`/people/${personId}/export/csv`} download>
            {t('exportCsv')}
          </a>
        </p>
      )}
      {merges && <WayTo href={`/people/${personId}/merge`} name={t('merge')} does={t('mergeDoes')} />}
      {erases && <WayTo href={`/people/${personId}/erase`} name={t('erase')} does={t('eraseDoes')} />}
    </section>
  );
}

function WayTo({ href, name, does }: { href: string; name: string; does: string }) {
  return (
    <p>
      <Link className={styles.way} href={href} prefetch={false}>
        {name}
      </Link>
      <span className={styles.sub}>{does}</span>
    </p>
  );
}
