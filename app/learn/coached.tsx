import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import styles from './learn.module.css';

/** Whether to be coached, with what that means. @param id  Of its own on the page. */
export function Coached({ id }: { id: string }) {
  const t = useTranslations('learn');
  return (
    <div>
      <label className={styles.coached}>
        <input type="checkbox" name="coached" value="yes" aria-describedby={id} />
        <span>{t('coached')}</span>
      </label>
      <p id={id} className={ui.small}>
        {t('coachedHint')}
      </p>
    </div>
  );
}
