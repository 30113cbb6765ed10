import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import type { GivenSet } from '@/db/queries/assignments';
import { archiveAssignment, changeAssignmentDates } from '../actions';
import styles from '../assignments.module.css';
import { FieldForm } from '../field-form';
import { WrongField } from '../form-fields';

/** What can be changed of an assignment that is given. */
export async function Changes({ found: { id, rules, archivedAt } }: { found: GivenSet }) {
  const t = await getTranslations('assignments.changes');
  const form = await getTranslations('assignments.form');
  const all = await getTranslations('assignments');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="changes">
      <h2 id="changes">{t('heading')}</h2>
      <p className={ui.prose}>{t('body')}</p>
      <FieldForm
        action={changeAssignmentDates}
        submit={t('move')}
        failed={problems('no-answer')}
        wrongTitle={all('wrongTitle')}
        done={t('moved')}
        quiet
      >
        <input type="hidden" name="assignmentId" value={id} />
        <input type="hidden" name="timeZone" value={rules.timeZone} />
        <div className={styles.pair}>
          <WrongField label={form('opens')} name="opens" type="datetime-local" defaultValue={rules.opens} />
          <WrongField label={form('closes')} name="closes" type="datetime-local" defaultValue={rules.closes} />
        </div>
        <p className={ui.small}>{t('clock', { zone: rules.timeZone })}</p>
      </FieldForm>
      <ActForm
        className={ui.stack}
        action={archiveAssignment}
        submit={archivedAt ? t('back') : t('away')}
        failed={problems('no-answer')}
        quiet
      >
        <input type="hidden" name="assignmentId" value={id} />
        <input type="hidden" name="put" value={archivedAt ? 'back' : 'away'} />
        <p className={ui.small}>{t('awayBody')}</p>
      </ActForm>
    </section>
  );
}
