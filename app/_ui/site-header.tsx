import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { readDisplay } from '@/app/_server/display';
import { Choice } from './choice';
import { themes, unitChoices } from './display-choices';
import styles from './site-header.module.css';
import ui from './ui.module.css';

/** The top of every page. `note` says where one is, such as the code of the case. */
export async function SiteHeader({ note }: { note?: React.ReactNode }) {
  const t = await getTranslations('header');
  const { units, theme } = await readDisplay();
  return (
    <header className={styles.header}>
      <a className={ui.skip} href="#main">
        {t('skip')}
      </a>
      <Link className={styles.name} href="/" prefetch={false}>
        Faultwright
      </Link>
      {note && <span className={styles.note}>{note}</span>}
      <nav className={styles.nav} aria-label={t('nav')}>
        <Link href="/learn" prefetch={false}>
          {t('practise')}
        </Link>
      </nav>
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
    </header>
  );
}
