import { getTranslations } from 'next-intl/server';
import type { SignedInPermit } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import ui from '@/app/_ui/ui.module.css';
import type { WrittenVersion } from '@/db/queries/written-questions';
import { can } from '@/lib/accounts/can';
import styles from '../questions.module.css';
import { approveQuestion, beginVersion, retireQuestion, sendBackQuestion } from './actions';

/** What the reader may do with the newest version as it stands. */
export async function VersionActs({ permit, version }: { permit: SignedInPermit; version: WrittenVersion }) {
  const t = await getTranslations('written.acts');
  const { actor } = permit.session;
  const writes = can(actor, 'questions.write', permit.resource);
  const reviews = can(actor, 'questions.review', permit.resource);
  const isOwn = version.writtenBy === actor.personId;
  const { state } = version;
  return (
    <section className={`${ui.panel} ${ui.stack} ${styles.acts}`} aria-labelledby="acts">
      <h2 id="acts">{t('title')}</h2>
      {state === 'in-review' && reviews && !isOwn && (
        <Act version={version} action={approveQuestion} submit={t('approve')}>
          <p className={ui.small}>{t('approveBody')}</p>
        </Act>
      )}
      {state === 'in-review' && reviews && (
        <Act version={version} action={sendBackQuestion} submit={isOwn ? t('takeBack') : t('sendBack')} quiet>
          {!isOwn && (
            <label className={ui.field}>
              <span>{t('note')}</span>
              <textarea name="note" rows={3} maxLength={2000} />
            </label>
          )}
        </Act>
      )}
      {(state === 'live' || state === 'retired') && writes && (
        <Act version={version} action={beginVersion} submit={t('begin')} quiet>
          <p className={ui.small}>{t('beginBody')}</p>
        </Act>
      )}
      {(state === 'live' || state === 'draft') && writes && (
        <Act version={version} action={retireQuestion} submit={state === 'live' ? t('retire') : t('discard')} quiet>
          <p className={ui.small}>{state === 'live' ? t('retireBody') : t('discardBody')}</p>
        </Act>
      )}
    </section>
  );
}

async function Act({
  version: { id, questionId },
  action,
  submit,
  quiet = false,
  children,
}: {
  version: WrittenVersion;
  action: (form: FormData) => Promise<ActResult>;
  submit: string;
  quiet?: boolean;
  children?: React.ReactNode;
}) {
  const problems = await getTranslations('problems');
  return (
    <ActForm className={ui.stack} action={action} submit={submit} failed={problems('no-answer')} quiet={quiet}>
      <input type="hidden" name="questionId" value={questionId} />
      <input type="hidden" name="versionId" value={id} />
      {children}
    </ActForm>
  );
}
