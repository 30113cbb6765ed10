import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { readDisplay } from '@/app/_server/display';
import { readSession, type Session } from '@/app/_server/session';
import { can } from '@/lib/accounts/can';
import type { Action } from '@/lib/accounts/permissions';
import type { Resource } from '@/lib/accounts/resource';
import { Choice } from './choice';
import { ChooseOrganization } from './choose-organization';
import { themes, unitChoices } from './display-choices';
import { SignOut } from './sign-out';
import styles from './site-header.module.css';
import ui from './ui.module.css';

/** The top of every page. `note` says where one is, such as the code of the case. */
export async function SiteHeader({ note }: { note?: React.ReactNode }) {
  const t = await getTranslations('header');
  const { units, theme } = await readDisplay();
  const session = await readSession();
  const open = placesFor(session);
  const many = open.length > FEW;
  const nav = (
    <nav className={many ? styles.manyPlaces : styles.nav} aria-label={t('nav')}>
      {open.map(({ href, name }) => (
        <Link key={href} href={href} prefetch={false}>
          {t(name)}
        </Link>
      ))}
    </nav>
  );
  return (
    <header className={styles.header}>
      <a className={ui.skip} href="#main">
        {t('skip')}
      </a>
      <Link className={styles.name} href="/" prefetch={false}>
        Faultwright
      </Link>
      {note && <span className={styles.note}>{note}</span>}
      {!many && nav}
      {session && <Person session={session} />}
      <div className={styles.choices}>
        <Choice
          name="units"
          label={t('units')}
          value={units}
          options={unitChoices.map((value) => ({ value, label: t(`unit.${value}`) }))}
        />
        <Choice
          name="theme"
          label={t('theme')}
          value={theme}
          options={themes.map((value) => ({ value, label: t(`themes.${value}`) }))}
        />
      </div>
      {many && nav}
    </header>
  );
}

/** So many places fit beside the rest; more get a line of their own. */
const FEW = 4;

/** Who is signed in, where they work, and the way out. */
async function Person({ session }: { session: Session }) {
  const t = await getTranslations('header');
  const { memberships, organization, name } = session;
  const named = memberships.map((one) => ({
    value: one.organizationId,
    label: one.demo ? `${one.name} (${t('invented')})` : one.name,
  }));
  return (
    <div className={styles.person}>
      {named.length > 1 ? (
        <ChooseOrganization label={t('organization')} value={organization?.organizationId} options={named} />
      ) : (
        <span className={styles.note}>{named[0]?.label}</span>
      )}
      <Link href="/me" prefetch={false} title={t('me')}>
        {name}
      </Link>
      <SignOut label={t('signOut')} />
    </div>
  );
}

const places = [
  { href: '/people', name: 'people', action: 'people.see' },
  { href: '/classes', name: 'classes', action: 'classes.see' },
  { href: '/questions', name: 'questions', action: 'questions.see' },
  { href: '/sets', name: 'sets', action: 'sets.see' },
  { href: '/assignments', name: 'assignments', action: 'assignments.see' },
  { href: '/review', name: 'review', action: 'review.see' },
  { href: '/gradebook', name: 'gradebook', action: 'gradebook.see' },
  { href: '/certificates', name: 'certificates', action: 'certificates.decide' },
  { href: '/readiness', name: 'readiness', action: 'readiness.see' },
  { href: '/log', name: 'log', action: 'log.see' },
  { href: '/settings', name: 'settings', action: 'settings.see' },
  { href: '/upkeep', name: 'upkeep', action: 'installation.see' },
] as const satisfies { href: string; name: string; action: Action }[];

/** The pages that somebody may open. */
function placesFor(session: Session | null) {
  if (!session) return [{ href: '/learn', name: 'practise' } as const, { href: '/sign-in', name: 'signIn' } as const];
  const { actor } = session;
  const organization: Resource[] = actor.organizationId
    ? [{ kind: 'organization', organizationId: actor.organizationId }, { kind: 'installation' }]
    : [{ kind: 'installation' }];
  const open = places.filter(({ action }) => organization.some((resource) => can(actor, action, resource)));
  if (!actor.organizationId) return open;
  // Whoever has more to look after finds it on the page of practice.
  const own = open.length === 0 ? [{ href: '/learn/progress', name: 'progress' } as const] : [];
  return [{ href: '/learn', name: 'practise' } as const, ...own, ...open];
}
