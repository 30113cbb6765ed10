import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { GivenView } from '@/app/_server/turns/read-given';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { PhaseLine } from './assignments/[assignmentId]/phase-line';
import styles from './learn.module.css';

/** In the order in which they matter today. */
const shelves = ['open', 'coming', 'closed'] as const;

/** What is assigned to somebody: what is open, what comes, and what has closed with what was told. */
export function AssignedPanel({ given, settings }: { given: readonly GivenView[]; settings: OrganizationSettings }) {
  const t = useTranslations('turns');
  if (given.length === 0) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="assigned">
      <h2 id="assigned">{t('assigned')}</h2>
      {shelves.map((shelf) => {
        const here = given.filter(({ phase }) => (phase === 'late' ? 'open' : phase) === shelf);
        if (here.length === 0) return null;
        return shelf === 'closed' ? (
          <details key={shelf} open={here.length === given.length}>
            <summary className={styles.shelf}>{t(`shelf.${shelf}`, { count: here.length })}</summary>
            <Lines given={here.toReversed()} settings={settings} />
          </details>
        ) : (
          <div key={shelf}>
            <h3>{t(`shelf.${shelf}`, { count: here.length })}</h3>
            <Lines given={here} settings={settings} />
          </div>
        );
      })}
    </section>
  );
}

function Lines({ given, settings }: { given: readonly GivenView[]; settings: OrganizationSettings }) {
  return (
    <ul className={styles.assigned}>
      {given.map((one) => (
        <li key={one.assignment.id}>
          <Line given={one} settings={settings} />
        </li>
      ))}
    </ul>
  );
}

function Line({ given, settings }: { given: GivenView; settings: OrganizationSettings }) {
  const t = useTranslations('turns');
  const { assignment, turns } = given;
  const open = turns.find(({ handedInAt }) => handedInAt === null);
  const told = turns.flatMap(({ outcome }) => outcome?.total ?? []);
  return (
    <>
      <Link className={styles.way} href={`/learn/assignments/${assignment.id}`} prefetch={false}>
        {assignment.title}
      </Link>
      {assignment.demo && <span className={styles.demo}>{t('demo')}</span>}
      <br />
      <span className={ui.small}>
        {open ? <b>{t('stateOpen')} </b> : null}
        <PhaseLine given={given} settings={settings} />{' '}
        {t('used-of', { used: turns.length, allowed: assignment.rules.turns })}
        {told.length > 0 && ` ${t('best', { total: Math.max(...told) })}`}
      </span>
    </>
  );
}
