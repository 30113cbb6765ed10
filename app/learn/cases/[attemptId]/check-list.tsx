import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { inGroups } from '@/app/_server/check-groups';
import type { CheckChoice } from '@/app/_server/rig-choices';
import styles from './case.module.css';

interface Listed {
  attemptId: string;
  checks: readonly CheckChoice[];
  chosen: string | undefined;
  /** Narrows the list to what can be done there. */
  port: string | undefined;
}

/** The checks to choose from, by area of work; at one port there are few, and they need no headings. */
export function CheckList({ attemptId, checks, chosen, port }: Listed) {
  const t = useTranslations('hookUp.groups');
  if (port !== undefined) return <Links attemptId={attemptId} checks={checks} chosen={chosen} port={port} />;
  return inGroups(checks).map(({ group, items }) => (
    // Open at first; whoever has no use for an area folds it away.
    <details key={group} className={styles.group} open>
      <summary>
        <h3>{t(group)}</h3> <span className={styles.cost}>{items.length}</span>
      </summary>
      <Links attemptId={attemptId} checks={items} chosen={chosen} port={port} />
    </details>
  ));
}

function Links({ attemptId, checks, chosen, port }: Listed) {
  return (
    <ul className={styles.checks}>
      {checks.map((choice) => (
        <li key={choice.id}>
          <CheckLink attemptId={attemptId} choice={choice} chosen={choice.id === chosen} port={port} />
        </li>
      ))}
    </ul>
  );
}

function CheckLink({
  attemptId,
  choice,
  chosen,
  port,
}: {
  attemptId: string;
  choice: CheckChoice;
  chosen: boolean;
  port: string | undefined;
}) {
  const t = useTranslations('hookUp');
  const query = new URLSearchParams({ ...(port !== undefined && { port }), check: choice.id });
  return (
    <Link
      className={styles.check}
      href={`/learn/cases/${attemptId}?${query}`}
      scroll={false}
      prefetch={false}
      aria-current={chosen ? 'true' : undefined}
    >
      <span className={styles.portTag}>{choice.ports.join(' ')}</span>
      <span>{choice.name}</span>
      <span className={styles.cost}>{t('minutes', { minutes: choice.minutes })}</span>
    </Link>
  );
}
