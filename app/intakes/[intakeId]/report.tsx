import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import lines from '@/app/_ui/lines.module.css';
import { Sideways } from '@/app/_ui/sideways';
import ui from '@/app/_ui/ui.module.css';
import type { IntakeOutcome } from '@/lib/readiness/intake-outcome';
import type { RoleProfile } from '@/lib/readiness/profile';
import styles from '../intakes.module.css';

/** What a new-hire check came to, topic by topic, with how sure that is. */
export async function Report({
  outcome,
  profile,
  personId,
}: {
  outcome: IntakeOutcome;
  profile: RoleProfile;
  personId: string;
}) {
  const t = await getTranslations('intakes');
  const { decision, topics, safety, tasks, minutes } = outcome;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="report">
      <h2 id="report">{t(`overall.${decision}`, { role: profile.text.en.name })}</h2>
      <p className={ui.prose}>{t('overallBody', { tasks, minutes, refuse: Math.round(profile.refuse * 100) })}</p>
      <Sideways label={t('tableCaption')}>
        <table className={styles.table}>
          <caption className={ui.small}>{t('tableCaption')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('colTopic')}</th>
              <th scope="col">{t('colDecision')}</th>
              <th scope="col">{t('colChance')}</th>
              <th scope="col">{t('colAbility')}</th>
              <th scope="col">{t('colResponses')}</th>
            </tr>
          </thead>
          <tbody>
            {topics.map((topic) => (
              <tr key={topic.topic}>
                <th scope="row">{catalogue().topics.get(topic.topic)?.text.en.name ?? topic.topic}</th>
                <td>{t(`word.${topic.decision}`)}</td>
                <td>
                  {t('chance', { chance: Math.round(topic.chance * 100), asked: Math.round(topic.confidence * 100) })}
                </td>
                <td>
                  {t('ability', {
                    mean: rounded(topic.mean),
                    low: rounded(topic.interval[0]),
                    high: rounded(topic.interval[1]),
                    cut: rounded(topic.cut),
                  })}
                </td>
                <td>{t('responses', { responses: topic.responses, cases: topic.cases })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      <p className={ui.prose}>
        {t(`safety.${safety.code}`)} {t('safetyOf', { cases: safety.cases, events: safety.events })}
      </p>
      <p className={ui.small}>{t('humanDecides')}</p>
      <p>
        <Link className={lines.way} href={`/readiness/${personId}/${profile.id}`} prefetch={false}>
          {t('toReadiness')}
        </Link>
      </p>
    </section>
  );
}

function rounded(logits: number): number {
  return Math.round(logits * 10) / 10;
}
