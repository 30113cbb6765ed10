import { getTranslations } from 'next-intl/server';
import { MOST_PEOPLE } from '@/app/_server/assignments/change-assignment';
import { database } from '@/app/_server/database';
import { ActForm } from '@/app/_ui/act-form';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { type AssignedPerson, listAssigned } from '@/db/queries/assigned-people';
import type { GivenSet } from '@/db/queries/assignments';
import { listTurnLines, type TurnLine } from '@/db/queries/turn-ends';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { giveExtraTime } from '../actions';
import styles from '../assignments.module.css';

interface Given {
  found: GivenSet;
  settings: OrganizationSettings;
  changes: boolean;
}

/** Everybody whom an assignment is given to, how far they are, and the time that they get on top. */
export async function People({ found, settings, changes }: Given) {
  const { id, organizationId } = found;
  const people = await listAssigned(database(), { assignmentId: id, organizationId }, MOST_PEOPLE);
  const lines = await listTurnLines(database(), id);
  const t = await getTranslations('assignments.people');
  const now = new Date();
  // Without a limit there is nothing to give more of.
  const timed = found.rules.minutes !== null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="people">
      <h2 id="people">{t('heading', { count: people.length })}</h2>
      {people.length === 0 && <p>{t('nobody')}</p>}
      {timed && changes && <p className={ui.small}>{t('extraBody')}</p>}
      <table className={styles.people}>
        <thead>
          <tr>
            <th scope="col">{t('name')}</th>
            <th scope="col">{t('state')}</th>
            {timed && <th scope="col">{t('extra')}</th>}
          </tr>
        </thead>
        <tbody>
          {people.map((person) => {
            const own = lines.filter(({ learnerId }) => learnerId === person.id);
            return (
              <tr key={person.id}>
                <th scope="row">{person.name}</th>
                <td data-label={t('state')}>
                  <State lines={own} settings={{ ...settings, timeZone: found.rules.timeZone }} now={now} />
                </td>
                {timed && (
                  <td data-label={t('extra')}>
                    {changes ? (
                      <Extra person={person} assignmentId={id} />
                    ) : (
                      t('percent', { percent: percentOf(person) })
                    )}
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

async function State({
  lines,
  settings,
  now,
}: {
  lines: readonly TurnLine[];
  settings: OrganizationSettings;
  now: Date;
}) {
  const t = await getTranslations('assignments.people');
  const last = lines.at(-1);
  if (!last) return t('notBegun');
  const { number, startedAt, handedInAt, endsAt } = last;
  if (handedInAt) return t('handedIn', { number, at: shownTime(handedInAt, settings) });
  return endsAt > now
    ? t('working', { number, since: shownTime(startedAt, settings), until: shownTime(endsAt, settings) })
    : t('over', { number, at: shownTime(endsAt, settings) });
}

async function Extra({ person, assignmentId }: { person: AssignedPerson; assignmentId: string }) {
  const t = await getTranslations('assignments.people');
  const problems = await getTranslations('problems');
  return (
    <ActForm
      className={styles.time}
      action={giveExtraTime}
      submit={t('give')}
      failed={problems('no-answer')}
      done={t('given')}
      quiet
    >
      <input type="hidden" name="assignmentId" value={assignmentId} />
      <input type="hidden" name="personId" value={person.id} />
      <input
        name="percent"
        inputMode="numeric"
        defaultValue={percentOf(person)}
        aria-label={t('extraOf', { name: person.name })}
        autoComplete="off"
        maxLength={3}
      />
      <span aria-hidden="true">%</span>
    </ActForm>
  );
}

function percentOf({ extraTime }: AssignedPerson): number {
  return Math.round(extraTime * 100);
}
