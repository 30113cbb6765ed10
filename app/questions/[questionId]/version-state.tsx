import { getTranslations } from 'next-intl/server';
import type { SignedInPermit } from '@/app/_server/permit';
import { organizationOf } from '@/app/_server/permit';
import { listReviewers } from '@/app/_server/questions/written/reviewers';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { WrittenVersion } from '@/db/queries/written-questions';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from '../questions.module.css';

/** In which state a version is, and who does what next. */
export async function VersionState({
  permit,
  version,
  isNewest,
  names,
  settings,
}: {
  permit: SignedInPermit;
  version: WrittenVersion;
  isNewest: boolean;
  names: ReadonlyMap<string, string>;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('written');
  const { number, state, reviewNote, reviewedBy } = version;
  const reviewer = reviewedBy === null ? undefined : names.get(reviewedBy);
  return (
    <>
      <p className={ui.prose}>
        <b>{t(`states.${state}`)}</b> · {t('version', { number })}
      </p>
      {!isNewest && <p className={ui.notice}>{t('state.old', { number })}</p>}
      <p className={ui.prose}>{await nextOf(permit, version, names, settings)}</p>
      {(state === 'draft' || state === 'in-review') && reviewNote && (
        <div className={ui.notice}>
          <b>{reviewer ? t('state.note', { reviewer }) : t('state.noteGone')}</b>
          <p className={styles.note}>{reviewNote}</p>
        </div>
      )}
    </>
  );
}

async function nextOf(
  permit: SignedInPermit,
  { state, writtenBy, changedAt }: WrittenVersion,
  names: ReadonlyMap<string, string>,
  settings: OrganizationSettings,
): Promise<string> {
  const t = await getTranslations('written');
  const writer = names.get(writtenBy) ?? t('erased');
  const isOwn = writtenBy === permit.session.actor.personId;
  const at = shownTime(changedAt, settings);
  if (state === 'draft') return isOwn ? t('state.draftYours') : t('state.draftTheirs', { writer });
  if (state !== 'in-review') return t(`state.${state}`);
  if (!isOwn) return t('state.inReviewTheirs', { at, writer });
  const reviewers = await listReviewers(organizationOf(permit), writtenBy);
  const people = new Intl.ListFormat('en', { type: 'disjunction' }).format(reviewers.map(({ name }) => name));
  return reviewers.length === 0 ? t('state.inReviewNobody', { at }) : t('state.inReviewYours', { at, people });
}
