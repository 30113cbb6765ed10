import Link from 'next/link';
import { useTranslations } from 'next-intl';
import styles from '../panels.module.css';

/** The tasks of a panel by number, with those that are rated marked. */
export function TaskPlaces({
  panelId,
  place,
  tasks,
  rated,
}: {
  panelId: string;
  place: number;
  tasks: number;
  rated: readonly number[];
}) {
  const t = useTranslations('panels');
  return (
    <nav aria-label={t('places')}>
      <ol className={styles.places}>
        {Array.from({ length: tasks }, (_, index) => index + 1).map((number) => (
          <li key={number}>
            <Link
              href={`/panels/${panelId}?task=${number}`}
              prefetch={false}
              aria-current={number === place ? 'page' : undefined}
            >
              {rated.includes(number) ? t('placeRated', { number }) : number}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
