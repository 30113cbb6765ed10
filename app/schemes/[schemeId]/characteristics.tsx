import { useTranslations } from 'next-intl';
import { Sideways } from '@/app/_ui/sideways';
import ui from '@/app/_ui/ui.module.css';
import { normalConsistency } from '@/lib/competency/consistency';
import type { SchemeCharacteristics } from '@/lib/readiness/characteristics-of-scheme';
import type { Scheme } from '@/lib/readiness/scheme';
import { logits } from '../logits';
import styles from '../schemes.module.css';

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

/** How often the scheme decides what, by simulated learners, and how far it would decide alike again. */
export function Characteristics({ scheme, found }: { scheme: Scheme; found: SchemeCharacteristics | undefined }) {
  const t = useTranslations('schemes.characteristics');
  if (!found)
    return (
      <section className={ui.panel} aria-labelledby="error">
        <h2 id="error">{t('title')}</h2>
        <p>{t('none')}</p>
      </section>
    );
  const { rows, population, madeBy } = found;
  const below = rows.find(({ above }) => above === -0.5);
  const twice = normalConsistency(scheme.cut.ability, population.correlation ** 2);
  const same =
    Math.abs(found.cut - scheme.cut.ability) < 0.005 &&
    found.confidence === scheme.confidence &&
    found.refuse === scheme.refuse;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="error">
      <h2 id="error">{t('title')}</h2>
      {below && <p className={ui.lead}>{t('inWords', { wrongly: Math.round(100 * below.ready) })}</p>}
      <p>{t('body')}</p>
      {!same && <p className={ui.notice}>{t('other', { cut: logits(found.cut) })}</p>}
      <Sideways label={t('title')}>
        <table className={styles.table}>
          <caption>{t('caption', { people: rows[0]?.people ?? 0 })}</caption>
          <thead>
            <tr>
              {(['above', 'ready', 'notYet', 'undecided', 'allReady', 'tasks', 'minutes'] as const).map((name) => (
                <th key={name} scope="col">
                  {t(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ above, ready, notYet, undecided, allReady, tasks, minutes }) => (
              <tr key={above}>
                <th scope="row">{above > 0 ? `+${logits(above)}` : logits(above)}</th>
                <td>{percent(ready)}</td>
                <td>{percent(notYet)}</td>
                <td>{percent(undecided)}</td>
                <td>{percent(allReady)}</td>
                <td>{tasks.toFixed(0)}</td>
                <td>{minutes.toFixed(0)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      <dl className={ui.facts}>
        <dt>{t('coverage')}</dt>
        <dd>{percent(population.coverage)}</dd>
        <dt>{t('correlation')}</dt>
        <dd>{population.correlation.toFixed(2)}</dd>
        <dt>{t('accuracy')}</dt>
        <dd>{percent(population.accuracy)}</dd>
        <dt>{t('agreement')}</dt>
        <dd>{percent(population.agreement)}</dd>
        <dt>{t('consistency')}</dt>
        <dd>{t('consistencyIs', { agreement: percent(twice.agreement), kappa: twice.kappa.toFixed(2) })}</dd>
      </dl>
      <p className={ui.small}>
        {t('madeBy', { cases: madeBy.cases, questions: madeBy.questionsPerTopic, people: population.people })}
      </p>
    </section>
  );
}
