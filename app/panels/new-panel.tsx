import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { possibleJudges } from '@/app/_server/panels/possible-judges';
import { listSchemes } from '@/app/_server/schemes';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import assignments from '@/app/assignments/assignments.module.css';
import { makePanel } from './actions';

/** Who judges which certificate's line, by how many tasks. */
export async function NewPanel({ organizationId }: { organizationId: string }) {
  const t = await getTranslations('panels');
  const problems = await getTranslations('problems');
  const schemes = await listSchemes(database(), organizationId);
  const judges = await possibleJudges(organizationId);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="new">
      <h2 id="new">{t('newTitle')}</h2>
      <p>{t('newBody')}</p>
      <ActForm className={ui.stack} action={makePanel} submit={t('make')} failed={problems('no-answer')}>
        <Field label={t('name')} name="title" required maxLength={120} autoComplete="off" />
        <label className={ui.field}>
          <span>{t('scheme')}</span>
          <select name="schemeId">
            {schemes.map(({ id, text }) => (
              <option key={id} value={id}>
                {text.en.name}
              </option>
            ))}
          </select>
        </label>
        <Field label={t('tasks')} rule={t('tasksRule')} name="tasks" inputMode="numeric" defaultValue="20" required />
        <fieldset className={assignments.group}>
          <legend>{t('judges')}</legend>
          <p className={ui.small}>{t('judgesRule')}</p>
          <div className={assignments.ticks}>
            {judges.map(({ id, name }) => (
              <label key={id} className={assignments.tick}>
                <input type="checkbox" name="judges" value={id} />
                <span>{name}</span>
              </label>
            ))}
          </div>
        </fieldset>
      </ActForm>
    </section>
  );
}
