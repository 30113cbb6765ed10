import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ReadSitting } from '@/app/_server/sittings/read-sitting';
import ui from '@/app/_ui/ui.module.css';
import styles from './sitting.module.css';

/** The questions of a check by number: what is answered has a bar below, what is flagged a corner. */
export function PlaceList({ read: { places }, at }: { read: ReadSitting; at: number | undefined }) {
  const t = useTranslations('sittings');
  return (
    <nav aria-label={t('list')}>
      <ol className={styles.places}>
        {places.map(({ place, answer, flagged }) => {
          const said = flagged
            ? answer
              ? 'placeFlaggedAnswered'
              : 'placeFlaggedOpen'
            : answer
              ? 'placeAnswered'
              : 'placeOpen';
          return (
            <li key={place}>
              <Link
                href={`?at=${place}`}
                prefetch={false}
                className={`${styles.place} ${answer ? styles.answered : ''} ${flagged ? styles.flagged : ''}`}
                aria-current={place === at ? 'true' : undefined}
                aria-label={t(said, { place })}
              >
                {place}
              </Link>
            </li>
          );
        })}
      </ol>
      <p className={`${ui.small} ${styles.legend}`} aria-hidden="true">
        <span className={`${styles.sample} ${styles.answered}`} /> {t('legendAnswered')}
        <span className={styles.sample} /> {t('legendOpen')}
        <span className={`${styles.sample} ${styles.flagged}`} /> {t('legendFlagged')}
      </p>
    </nav>
  );
}
