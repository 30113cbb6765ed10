import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { listProfiles } from '@/app/_server/profiles';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import type { TopicProgress } from '@/lib/competency/progress';
import type { RoleProfile } from '@/lib/readiness/profile';
import { topicsInOrder } from '@/lib/topics/topic';
import styles from './progress.module.css';
import { ProgressTable } from './progress-table';
import { TopicLine } from './topic-line';

/** Who reads it: whose it is, or somebody who answers for them. */
export type Reader = 'learner' | 'staff';

export interface ProgressViewProps {
  progress: ReadonlyMap<string, TopicProgress>;
  organizationId: string;
  settings: OrganizationSettings;
  /** What the address asks for. */
  role: string | string[] | undefined;
  /** Address of the page. */
  here: string;
  by: Reader;
}

/** A topic with what is known of it, and the line where the chosen role asks for it. */
export interface LineOfTopic {
  id: string;
  name: string;
  shown: TopicProgress | undefined;
  /** Undefined where the role does not ask for the topic. */
  cut: number | undefined;
}

/** Where the line lies while no role is chosen. */
const NO_ROLE = 0;

/** Every topic on one scale, in numbers, and what it rests on. */
export async function ProgressView({ progress, organizationId, settings, role, here, by }: ProgressViewProps) {
  const t = await getTranslations('progress');
  const profiles = await listProfiles(database(), organizationId);
  const chosen = profiles.find(({ id }) => id === role);
  const cutOf = (topic: string) => (chosen ? chosen.topics.find((one) => one.topic === topic)?.cut : NO_ROLE);
  const lines = topicsInOrder(catalogue()).map(({ id, text }): LineOfTopic => {
    return { id, name: text.en.name, shown: progress.get(id), cut: cutOf(id) };
  });
  return (
    <>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="bars">
        <h2 id="bars">{t('barsTitle')}</h2>
        <ChooseRole {...{ profiles, here }} chosen={chosen?.id ?? ''} />
        <p className={ui.small}>{t('scale')}</p>
        <ul className={styles.topics}>
          {lines.map((line) => (
            <TopicLine key={line.id} {...{ line, settings, by }} ofRole={chosen !== undefined} />
          ))}
        </ul>
      </section>
      <ProgressTable {...{ lines, settings }} />
    </>
  );
}

async function ChooseRole({
  profiles,
  chosen,
  here,
}: {
  profiles: readonly RoleProfile[];
  chosen: string;
  here: string;
}) {
  const t = await getTranslations('progress');
  return (
    <form method="get" action={here} className={styles.role}>
      <label className={ui.field}>
        <span>{t('role')}</span>
        <select name="role" defaultValue={chosen}>
          <option value="">{t('noRole')}</option>
          {profiles.map(({ id, text }) => (
            <option key={id} value={id}>
              {text.en.name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">{t('show')}</button>
    </form>
  );
}
