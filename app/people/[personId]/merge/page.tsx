import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { memberNamed, type NamedMember } from '@/app/_server/people/change-member';
import { permit as ask } from '@/app/_server/permit';
import { memberOf } from '@/app/_server/resource-behind';
import { ActForm } from '@/app/_ui/act-form';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { countHeld, listOthers } from '@/db/queries/people';
import { formatRoles, parseRoles } from '@/lib/accounts/roles';
import { shownName } from '@/lib/accounts/sign-in-name';
import styles from '../../people.module.css';
import { mergePeople } from '../actions';

/** As many as the list of an organisation's people. */
const LISTED = 500;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('merge') };
}

/** Chooses the double of a person, shows what would move, and merges them. */
export default page('/people/[personId]/merge', async (permit, props: PageProps<'/people/[personId]/merge'>) => {
  const kept = await memberNamed(permit);
  const { double: doubleId, search } = await props.searchParams;
  const resource = typeof doubleId === 'string' ? await memberOf(kept.organizationId, doubleId) : undefined;
  const allowed = resource && ask(permit.session, 'member.merge', resource);
  const double = allowed && doubleId !== kept.userId ? await memberNamed(allowed) : undefined;
  const t = await getTranslations('people');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('mergeTitle', { name: kept.name })}</h1>
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('merge')}>
          <p className={ui.prose}>{t('mergeBody', { name: kept.name, signIn: shownName(kept.address) })}</p>
          <Choose kept={kept} chosen={double?.userId} search={typeof search === 'string' ? search.trim() : ''} />
        </section>
        {double && resource?.kind === 'member' && (
          <Preview kept={kept} double={double} staysElsewhere={resource.ownSignIn} />
        )}
        <p>
          <Link className={styles.way} href={`/people/${kept.userId}`} prefetch={false}>
            {kept.name}
          </Link>
        </p>
      </main>
    </>
  );
});

interface ChooseProps {
  kept: NamedMember;
  chosen: string | undefined;
  search: string;
}

async function Choose({ kept, chosen, search }: ChooseProps) {
  const others = await listOthers(database(), kept, { search: search.slice(0, 80) }, LISTED);
  const t = await getTranslations('people');
  return (
    <>
      <search>
        <form className={styles.filter} method="get">
          <label className={ui.field}>
            <span>{t('search')}</span>
            <input name="search" type="search" defaultValue={search} maxLength={80} autoComplete="off" />
          </label>
          <button type="submit">{t('find')}</button>
        </form>
      </search>
      {others.length === 0 && <p role="status">{t('count', { count: 0 })}</p>}
      <form className={ui.stack} method="get">
        {search !== '' && <input type="hidden" name="search" value={search} />}
        <label className={ui.field}>
          <span>{t('double')}</span>
          <select name="double" required defaultValue={chosen ?? ''}>
            <option value="" disabled>
              {t('choose')}
            </option>
            {others.map(({ id, name, address }) => (
              <option key={id} value={id}>
                {name} · {shownName(address)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit">{t('look')}</button>
      </form>
    </>
  );
}

async function Preview({
  kept,
  double,
  staysElsewhere,
}: {
  kept: NamedMember;
  double: NamedMember;
  staysElsewhere: boolean;
}) {
  const held = await countHeld(database(), double);
  const t = await getTranslations('people');
  const roles = await getTranslations('roles');
  const problems = await getTranslations('problems');
  const united = parseRoles(formatRoles([...parseRoles(kept.role), ...parseRoles(double.role)]));
  const signIn = shownName(double.address);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-label={t('look')}>
      <h2>{t('moves', { double: double.name, signIn, name: kept.name })}</h2>
      <ul>
        <li>{t('movesAttempts', { count: held.attempts, finished: held.finished })}</li>
        <li>{t('movesSittings', { count: held.sittings })}</li>
        <li>{t('movesClasses', { count: held.classes })}</li>
        <li>{t('movesRoles', { name: kept.name, roles: united.map((role) => roles(role)).join(', ') })}</li>
        <li>{staysElsewhere ? t('signInStays', { signIn }) : t('signInGone', { signIn })}</li>
      </ul>
      <ActForm className={ui.stack} action={mergePeople} submit={t('mergeNow')} failed={problems('no-answer')}>
        <input type="hidden" name="personId" value={kept.userId} />
        <input type="hidden" name="doubleId" value={double.userId} />
        <p className={ui.caution}>{t('mergeFinal')}</p>
      </ActForm>
    </section>
  );
}
