import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import { shownTime } from '@/app/_ui/shown-date';
import type { SittingLine } from '@/db/queries/sittings';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import learn from '../learn.module.css';

/** A learner's sittings at questions, each with its way on. */
export function SittingTable({
  sittings,
  settings,
}: {
  sittings: readonly SittingLine[];
  settings: OrganizationSettings;
}) {
  const t = useTranslations('sittings');
  return (
    <table className={learn.attempts}>
      <thead>
        <tr>
          <th scope="col">{t('colWhat')}</th>
          <th scope="col">{t('colStarted')}</th>
          <th scope="col">{t('colState')}</th>
        </tr>
      </thead>
      <tbody>
        {sittings.map((sitting) => (
          <tr key={sitting.id}>
            <td>
              <Link className={learn.way} href={`/learn/sittings/${sitting.id}`} prefetch={false}>
                <What sitting={sitting} />
              </Link>
              {sitting.demo && <span className={learn.demo}>{t('demo')}</span>}
            </td>
            <td>{shownTime(sitting.createdAt, settings)}</td>
            <td>
              <State sitting={sitting} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function What({ sitting: { mode, topics } }: { sitting: SittingLine }) {
  const t = useTranslations('sittings');
  const [first] = topics;
  if (first === undefined) return t(`mode.${mode}`);
  const name = catalogue().topics.get(first)?.text.en.name ?? first;
  return t('of', {
    mode: t(`mode.${mode}`),
    topics: topics.length === 1 ? name : t('moreTopics', { count: topics.length }),
  });
}

function State({ sitting: { mode, handedInAt, questions, marked } }: { sitting: SittingLine }) {
  const t = useTranslations('sittings');
  if (handedInAt) return t('stateDone', { questions: marked });
  return mode === 'check' ? t('stateCheck', { questions }) : t('stateOpen', { marked, questions });
}
