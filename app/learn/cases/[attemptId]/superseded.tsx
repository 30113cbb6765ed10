import { getTranslations } from 'next-intl/server';
import type { AttemptView } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { StartRandom } from '../../start-random';
import { Findings } from './findings';

/** An open attempt whose case can no longer be computed as it was: what is recorded, and a way on. */
export async function Superseded({
  view,
  units,
  note,
}: {
  view: AttemptView;
  units: UnitChoice;
  note: React.ReactNode;
}) {
  const t = await getTranslations('superseded');
  return (
    <>
      <SiteHeader note={note} />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.stack}`}>
          <h1>{t('title')}</h1>
          <p>{t('body')}</p>
          <StartRandom label={t('fresh')} />
        </section>
        <Findings view={view} units={units} />
        <SafetyNote />
      </main>
    </>
  );
}
