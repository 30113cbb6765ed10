import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { readAttemptView } from '@/app/_server/attempt-view';
import { readDisplay } from '@/app/_server/display';
import { drawingOf } from '@/app/_server/drawings';
import { page } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { DrawingPanel } from '@/app/_ui/drawing/drawing-panel';
import { Reveal } from '@/app/_ui/reveal';
import { SafetyNote } from '@/app/_ui/safety-note';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { Bench } from './bench';
import { CallPanel } from './call-panel';
import styles from './case.module.css';
import { Coach } from './coach';
import { Findings } from './findings';
import { HookUp } from './hook-up';
import { portLinks } from './port-links';
import { selectFrom } from './selection';
import { Superseded } from './superseded';
import { WorkOrder } from './work-order';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('case');
  return { title: t('workOrder') };
}

/** The workspace of one case. */
export default page(
  '/learn/cases/[attemptId]',
  async (permit, { params, searchParams }: PageProps<'/learn/cases/[attemptId]'>) => {
    const { attemptId } = await params;
    const view = await readAttemptView(deskOf(permit), attemptId);
    if (!view) notFound();
    const { units } = await readDisplay();
    const t = await getTranslations('case');
    const note = view.intake?.open ? (
      <Link href={`/learn/intakes/${view.intake.id}`} prefetch={false}>
        {t('toIntake')}
      </Link>
    ) : view.turn ? (
      <Link href={`/learn/turns/${view.turn.id}`} prefetch={false}>
        {t('toTurn', { title: view.turn.title })}
      </Link>
    ) : (
      <>
        {t('note')} <span className={ui.code}>{view.code}</span>
      </>
    );
    if (!view.face) return <Superseded view={view} units={units} note={note} />;

    const { face } = view;
    const selection = selectFrom(view, await searchParams);
    const { check, port, reading, item } = selection;
    return (
      <>
        <SiteHeader note={note} />
        <main id="main" className={`${ui.page} ${styles.workspace}`}>
          <WorkOrder view={view} face={face} units={units} />
          <div className={styles.middle}>
            <DrawingPanel
              rig={face.rig}
              drawing={drawingOf(face.rig.id)}
              {...(view.state === 'open' && { ports: portLinks(view.id, face, selection) })}
            />
            <div className={styles.work}>
              {reading && item && <Bench view={view} face={face} reading={reading} item={item} units={units} />}
              {view.state === 'open' && view.coached && <Coach view={view} />}
              {view.state === 'open' && <HookUp view={view} face={face} selection={selection} />}
            </div>
          </div>
          <div className={styles.side}>
            <Findings view={view} units={units} />
            <CallPanel view={view} choices={face.choices} />
          </div>
          <div className={styles.foot}>
            <SafetyNote />
          </div>
        </main>
        <Reveal
          target={reading ? 'bench' : check ? 'hook-form' : 'hook-up'}
          when={[port, check?.id, reading?.seq, item?.quantity, item?.finding?.seq].join(' ')}
        />
        <Reveal target="coach" when={String(view.hints.at(-1)?.seq)} />
      </>
    );
  },
);
