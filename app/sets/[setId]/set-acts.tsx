import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { SignedInPermit } from '@/app/_server/permit';
import { setReaderFor } from '@/app/_server/sets/set-reader';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import ui from '@/app/_ui/ui.module.css';
import type { StoredSet } from '@/db/queries/sets';
import { can } from '@/lib/accounts/can';
import styles from '../sets.module.css';
import { archiveSet, duplicateSet, restoreSet, shareSet, unshareSet } from './actions';

/** What the reader may do with a set as a whole. */
export async function SetActs({ permit, set }: { permit: SignedInPermit; set: StoredSet }) {
  const { actor } = permit.session;
  if (!can(actor, 'sets.change', permit.resource)) return null;
  const t = await getTranslations('sets.acts');
  const { personId, seesAll } = setReaderFor(actor);
  const isTheirs = seesAll || set.createdBy === personId;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="acts">
      <h2 id="acts">{t('title')}</h2>
      {!set.archivedAt && can(actor, 'assignments.change', permit.resource) && (
        <p>
          <Link className={styles.way} href={`/assignments/new?set=${set.id}`} prefetch={false}>
            {t('give')}
          </Link>
        </p>
      )}
      <div className={styles.acts}>
        {!set.archivedAt && !set.sharedAt && (
          <Act set={set} action={shareSet} submit={t('share')} says={t('shareBody')} />
        )}
        {set.sharedAt && isTheirs && (
          <Act set={set} action={unshareSet} submit={t('unshare')} says={t('unshareBody')} />
        )}
        <Act set={set} action={duplicateSet} submit={t('duplicate')} says={t('duplicateBody')} />
        {set.archivedAt ? (
          <Act set={set} action={restoreSet} submit={t('restore')} says={t('restoreBody')} />
        ) : (
          <Act set={set} action={archiveSet} submit={t('archive')} says={t('archiveBody')} />
        )}
      </div>
    </section>
  );
}

async function Act({
  set: { id },
  action,
  submit,
  says,
}: {
  set: StoredSet;
  action: (form: FormData) => Promise<ActResult>;
  submit: string;
  says: string;
}) {
  const problems = await getTranslations('problems');
  return (
    <ActForm className={ui.stack} action={action} submit={submit} failed={problems('no-answer')} quiet>
      <input type="hidden" name="setId" value={id} />
      <p className={ui.small}>{says}</p>
    </ActForm>
  );
}
