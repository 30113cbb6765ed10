import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { readDisplay } from '@/app/_server/display';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { deskOf } from '@/app/_server/permit';
import { currentSitting } from '@/app/_server/sittings/current-sitting';
import { isOpen, type ReadSitting, type SittingPlace } from '@/app/_server/sittings/read-sitting';
import { isUntoldWithin, tellsAt, withinWhat } from '@/app/_server/turns/untold';
import { SafetyNote } from '@/app/_ui/safety-note';
import { shownTime } from '@/app/_ui/shown-date';
import { SiteHeader } from '@/app/_ui/site-header';
import { TimeLeft } from '@/app/_ui/time-left/time-left';
import ui from '@/app/_ui/ui.module.css';
import { kinds } from '@/lib/questions/kinds';
import learn from '../../learn.module.css';
import { CheckQuestion } from './check-question';
import { DrillQuestion } from './drill-question';
import { IntakeQuestion } from './intake-question';
import { PlaceList } from './place-list';
import { Result } from './result';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('sittings');
  return { title: t('title') };
}

/** One sitting: the question that is asked now, or how it went. */
export default page(
  '/learn/sittings/[sittingId]',
  async (permit, { params, searchParams }: PageProps<'/learn/sittings/[sittingId]'>) => {
    const { sittingId } = await params;
    const now = new Date();
    const read = await currentSitting(deskOf(permit), sittingId, now);
    if (!read) notFound();
    const [{ units }, settings, t] = await Promise.all([
      readDisplay(),
      settingsFor(permit.session),
      getTranslations('sittings'),
    ]);
    const { sitting, places } = read;
    const within = await withinWhat(database(), { sittingId });
    const { turn, intake } = within;
    const untold = isUntoldWithin(within, now);
    const open = isOpen(sitting, now);
    // Of a new-hire check only the question that is open is looked at.
    const at = intake && untold ? places.at(-1)?.place : chosenPlace(read, (await searchParams).at);
    const place = places.find((one) => one.place === at);
    return (
      <>
        <SiteHeader />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <div className={ui.head}>
            <h1>
              {turn
                ? t('ofTurn', { title: turn.assignment.title })
                : intake
                  ? t('ofIntake')
                  : t('of', { mode: t(`mode.${sitting.mode}`), topics: topicsOf(read, t) })}
            </h1>
            {sitting.demo && <span className={ui.small}>{t('demo')}</span>}
          </div>
          {open && intake && place && (
            <>
              {sitting.closesAt && <TimeLeft closesAt={sitting.closesAt} now={now} settings={settings} />}
              <IntakeQuestion place={place} units={units} intakeId={intake.id} />
            </>
          )}
          {open && !intake && sitting.mode === 'check' && (
            <>
              {sitting.closesAt && <TimeLeft closesAt={sitting.closesAt} now={now} settings={settings} />}
              <PlaceList read={read} at={at} />
              {place && <CheckQuestion read={read} place={place} units={units} turnId={turn?.turn.id} />}
            </>
          )}
          {open && sitting.mode !== 'check' && place && <DrillQuestion read={read} place={place} units={units} />}
          {!open && untold && (
            <p className={ui.notice}>
              {turn ? t('untold', { time: shownTime(tellsAt(turn), settings) }) : t('untoldIntake')}
            </p>
          )}
          {!open && !untold && <Result read={read} units={units} place={place} settings={settings} />}
          <p>
            <Link
              className={learn.way}
              href={turn ? `/learn/turns/${turn.turn.id}` : intake ? `/learn/intakes/${intake.id}` : '/learn/questions'}
              prefetch={false}
            >
              {turn ? t('toTurn') : intake ? t('toIntake') : t('back')}
            </Link>
          </p>
          <SafetyNote later={(open || untold) && places.some((one) => asksWhatIsSafe(one, untold))} />
        </main>
      </>
    );
  },
);

/** The place that the address names; in an open drill the last, in a check the first, in a result none. */
function chosenPlace({ sitting, places }: ReadSitting, at: string | string[] | undefined): number | undefined {
  const named = places.find(({ place }) => String(place) === at)?.place;
  if (sitting.handedInAt) return named;
  return sitting.mode === 'check' ? (named ?? places[0]?.place) : places.at(-1)?.place;
}

/** Whether cautions would answer what is open there, or not told. */
function asksWhatIsSafe({ spec, mark }: SittingPlace, untold: boolean): boolean {
  return (untold || !mark) && spec !== null && kinds.get(spec.kind)?.asksWhatIsSafe === true;
}

function topicsOf(
  { sitting: { topics } }: ReadSitting,
  t: Awaited<ReturnType<typeof getTranslations<'sittings'>>>,
): string {
  const [only] = topics;
  if (topics.length === 1 && only !== undefined) return catalogue().topics.get(only)?.text.en.name ?? only;
  return topics.length === 0 ? t('allTopics') : t('moreTopics', { count: topics.length });
}
