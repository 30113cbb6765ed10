import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import ui from '@/app/_ui/ui.module.css';
import type { Topic } from '@/lib/topics/topic';
import { StartDrill } from '../questions/start-drill';
import { StartRandom } from '../start-random';
import styles from './topics.module.css';

/** One topic. Its id is an anchor, for links from elsewhere. */
export function TopicPanel({ topic }: { topic: Topic }) {
  const t = useTranslations('topics');
  const { id, areas, checks, correspondsTo, text } = topic;
  const names = checks.flatMap((check) => catalogue().checks.get(check)?.text.en.name ?? []);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby={id}>
      <h2 id={id} className={styles.name}>
        {text.en.name}
      </h2>
      <p className={ui.prose}>{text.en.about}</p>
      {areas.length === 0 && <p className={ui.small}>{t('every')}</p>}
      <div>
        <h3 className={styles.checksTitle}>{t('checks')}</h3>
        {names.length === 0 ? (
          <p>{t('anyCheck')}</p>
        ) : (
          <ul className={styles.checks}>
            {names.map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        )}
      </div>
      <div>
        <h3 className={styles.checksTitle}>{t('correspondsTo')}</h3>
        <ul className={styles.standards}>
          {correspondsTo.map(({ framework, code, title, howKnown }) => (
            <li key={`${framework} ${code}`}>
              {framework}: <span className={ui.code}>{code}</span> {title}
              {howKnown === 'memory' && ` (${t('fromMemory')})`}
            </li>
          ))}
        </ul>
      </div>
      <div className={styles.start}>
        <StartRandom label={t('start', { topic: text.en.name })} topic={id} />
        <StartDrill label={t('drill', { topic: text.en.name })} topic={id} />
      </div>
    </section>
  );
}
