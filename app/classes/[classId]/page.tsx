import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import styles from '@/app/_ui/lines.module.css';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { timeZones } from '@/app/settings/time-zones';
import { type Class, findClass } from '@/db/queries/classes';
import { can } from '@/lib/accounts/can';
import { archiveClass, renameClass, setClassZone } from '../actions';
import { ClassPeople } from './class-people';
import { JoinCode } from './join-code';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('classes');
  return { title: t('one') };
}

/** One class: who is in it, and the code that lets in. */
export default page('/classes/[classId]', async (permit, { params }: PageProps<'/classes/[classId]'>) => {
  const { classId } = await params;
  const found = await findClass(database(), classId);
  if (!found) notFound();
  const changes = can(permit.session.actor, 'classes.change', permit.resource);
  const t = await getTranslations('classes');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{found.name}</h1>
        {found.archivedAt && <p className={ui.notice}>{t('archivedBody')}</p>}
        {changes && !found.archivedAt && <JoinCode session={permit.session} found={found} />}
        <ClassPeople session={permit.session} found={found} changes={changes} />
        {changes && <Changes found={found} usual={(await settingsFor(permit.session)).timeZone} />}
      </main>
    </>
  );
});

async function Changes({ found: { id, name, timeZone, archivedAt }, usual }: { found: Class; usual: string }) {
  const t = await getTranslations('classes');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack} ${styles.onScreen}`} aria-labelledby="changes">
      <h2 id="changes">{t('changesTitle')}</h2>
      <ActForm
        className={ui.stack}
        action={renameClass}
        submit={t('rename')}
        failed={problems('no-answer')}
        done={t('renamed')}
        quiet
      >
        <input type="hidden" name="classId" value={id} />
        <Field label={t('name')} name="name" defaultValue={name} required maxLength={80} autoComplete="off" />
      </ActForm>
      <ActForm
        className={ui.stack}
        action={setClassZone}
        submit={t('setZone')}
        failed={problems('no-answer')}
        done={t('zoneSet')}
        quiet
      >
        <input type="hidden" name="classId" value={id} />
        <label className={ui.field}>
          <span>{t('timeZone')}</span>
          <select name="timeZone" defaultValue={timeZone ?? ''}>
            <option value="">{t('usualZone', { zone: usual })}</option>
            {timeZones(timeZone ?? 'UTC').map((zone) => (
              <option key={zone} value={zone}>
                {zone}
              </option>
            ))}
          </select>
        </label>
        <p className={ui.small}>{t('zoneBody')}</p>
      </ActForm>
      <ActForm
        className={ui.stack}
        action={archiveClass}
        submit={archivedAt ? t('unarchive') : t('archive')}
        failed={problems('no-answer')}
        quiet
      >
        <input type="hidden" name="classId" value={id} />
        <input type="hidden" name="put" value={archivedAt ? 'back' : 'away'} />
        <p className={ui.small}>{t('archiveBody')}</p>
      </ActForm>
    </section>
  );
}
