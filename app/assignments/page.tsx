import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import lines from '@/app/_ui/lines.module.css';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { type AssignmentLine, listAssignments } from '@/db/queries/assignments';
import { can } from '@/lib/accounts/can';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { phaseOf } from '@/lib/assignments/phase';

/** More assignments than a year of an organisation has. */
const LISTED = 400;

/** In the order in which they matter to somebody who teaches today. */
const shelves = ['open', 'late', 'coming', 'closed', 'away'] as const;
type Shelf = (typeof shelves)[number];

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('assignments');
  return { title: t('title') };
}

/** Every assignment of the organisation, by where it stands. */
export default page('/assignments', async (permit) => {
  const found = await listAssignments(database(), organizationOf(permit), LISTED);
  const settings = await settingsFor(permit.session);
  const now = new Date();
  const t = await getTranslations('assignments');
  const on = (shelf: Shelf) => found.filter((line) => shelfOf(line, now) === shelf);
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        {can(permit.session.actor, 'assignments.change', permit.resource) && (
          <p>
            <Link className={ui.primary} href="/assignments/new" prefetch={false}>
              {t('giveOne')}
            </Link>
          </p>
        )}
        {found.length === 0 && <p className={ui.prose}>{t('none')}</p>}
        {shelves.map((shelf) => {
          const here = on(shelf);
          if (here.length === 0) return null;
          const list = <Lines found={here} settings={settings} />;
          return (
            <section key={shelf} className={ui.panel} aria-labelledby={shelf}>
              {shelf === 'away' ? (
                <details>
                  <summary id={shelf}>{t('shelf.away', { count: here.length })}</summary>
                  {list}
                </details>
              ) : (
                <>
                  <h2 id={shelf}>{t(`shelf.${shelf}`)}</h2>
                  {list}
                </>
              )}
            </section>
          );
        })}
      </main>
    </>
  );
});

/** It stands open as long as it is open for anybody. */
function shelfOf(line: AssignmentLine, now: Date): Shelf {
  return line.archivedAt ? 'away' : phaseOf(line, now, { extraTime: line.mostExtraTime });
}

async function Lines({ found, settings }: { found: readonly AssignmentLine[]; settings: OrganizationSettings }) {
  const t = await getTranslations('assignments');
  return (
    <ul className={lines.lines}>
      {found.map(({ id, title, rules, opensAt, closesAt, begun, handedIn, demo }) => (
        <li key={id}>
          <Link className={lines.way} href={`/assignments/${id}`} prefetch={false}>
            {title}
          </Link>
          <span className={ui.small}>
            {t(`modes.${rules.mode}`)} ·{' '}
            {t('window', { opens: shownTime(opensAt, settings), closes: shownTime(closesAt, settings) })} ·{' '}
            {t('counts', { begun, handedIn })}
            {demo && ` · ${t('invented')}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
