import { useTranslations } from 'next-intl';
import ui from './ui.module.css';

/**
 * The cautions that go with all hands-on work. Stands at the foot of every page that describes some.
 *
 * @param later  Only says what comes first: beside a question that the cautions would answer.
 */
export function SafetyNote({ later = false }: { later?: boolean }) {
  const t = useTranslations('safety');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="safety-title">
      <h2 id="safety-title">{t('title')}</h2>
      <p className={ui.prose}>
        <strong>{t('law')}</strong> {t(later ? 'later' : 'list')}
      </p>
    </section>
  );
}
