import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { RegradeLine } from '@/db/queries/regrades';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { undoChange } from './actions';
import { ChangeInWords } from './change-in-words';

/** What was changed, by whom and why, with the way back. */
export async function ChangesMade({
  changes,
  settings,
}: {
  changes: readonly RegradeLine[];
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('marks');
  const problems = await getTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="made">
      <h2 id="made">{t('madeTitle')}</h2>
      {changes.length === 0 && <p>{t('madeNone')}</p>}
      {changes.map(({ id, change, reason, maker, madeAt, undoneAt, undoer }) => (
        <div key={id} className={ui.stack}>
          <p>
            <ChangeInWords change={change} />
            <br />
            <span className={ui.small}>
              {t('madeBy', { maker: maker ?? t('erased'), at: shownTime(madeAt, settings), reason })}
            </span>
          </p>
          {undoneAt ? (
            <p className={ui.small}>
              {t('undoneBy', { undoer: undoer ?? t('erased'), at: shownTime(undoneAt, settings) })}
            </p>
          ) : (
            <ActForm action={undoChange} submit={t('undo')} failed={problems('no-answer')} quiet>
              <input type="hidden" name="regradeId" value={id} />
            </ActForm>
          )}
        </div>
      ))}
    </section>
  );
}
