import type { Mistake } from '@/lib/checks/check';
import type { Answer, CallAct } from '@/lib/grading/acts';
import type { FindingGrade, Grade, SafetyEvent } from '@/lib/grading/grade';
import { topicsOf } from '@/lib/topics/topics-of';
import { familyOf } from './alike-causes';
import { type AttemptView, attemptView, type ReadingItem, type ReadingView } from './attempt-view';
import { catalogue } from './catalogue';
import { caseOf, type History, isSuperseded, readHistory } from './history';
import type { Desk } from './permit';
import { type RepairPressures, repairPressures } from './repair-pressures';
import { type RouteViews, routeViews } from './route-views';
import { type Skipped, skippedChecks } from './skipped-checks';
import { type TryResult, tryCheck } from './try-check';
import { isUntoldWithin } from './turns/untold';

/** A finding with what it judged and how it was graded. */
export interface GradedFinding {
  reading: ReadingView;
  item: ReadingItem;
  grade: FindingGrade;
}

/** One cause that was called, in words. */
export interface NamedAnswer {
  cause: string;
  repair: string;
  proof: CallAct['proof'] & { name: string };
}

/** One cause that there was. */
export interface TruthView {
  cause: string;
  severity: number;
  name: string;
  how: string;
  element: string | null;
  repairs: readonly { id: string; name: string; minutes: number; parts: readonly string[] }[];
}

/** Something dangerous that was done. */
export interface DangerView {
  event: SafetyEvent;
  reading: ReadingView | undefined;
  /** What the check is known to go wrong by, where it did. */
  mistakes: readonly string[];
}

export interface DebriefView {
  attempt: AttemptView;
  /** Causes that were called, by id. */
  called: readonly string[];
  answers: readonly NamedAnswer[];
  /** As it was given at the call; never computed anew. */
  grade: Grade;
  truths: readonly TruthView[];
  findings: readonly GradedFinding[];
  dangers: readonly DangerView[];
  routes: RouteViews;
  /** Checks worth trying now; none where the grade does not say or the case can no longer be computed. */
  skipped: readonly Skipped[];
  /** What was asked to be tried. */
  trial: TryResult | undefined;
  /** Undefined where the case can no longer be computed. */
  repaired: RepairPressures | undefined;
  /** Parts of the trade that the case belongs to. */
  topics: readonly { id: string; name: string }[];
  /** Whether the rig can have other causes of the same area. */
  hasFamily: boolean;
}

/** What the address asks a debrief to show besides, as it came in. */
export interface Asked {
  try?: unknown;
  at?: unknown;
}

/**
 * What a debrief shows. `open` while the call is not made; `untold` while it is part of a turn or a new-hire check of which nothing may be told;
 * undefined when the attempt is missing or someone else's.
 */
export async function readDebriefView(
  desk: Desk,
  attemptId: string,
  asked: Asked = {},
): Promise<DebriefView | 'open' | 'untold' | undefined> {
  const history = await readHistory(desk, attemptId);
  if (!history) return undefined;
  if (isUntoldWithin(history, new Date())) return 'untold';
  return history.call ? debriefView(history, history.call, asked) : 'open';
}

export function debriefView(
  history: History,
  { body, grade }: NonNullable<History['call']>,
  asked: Asked,
): DebriefView {
  const attempt = attemptView(history);
  const answers = body.also ? [body, body.also] : [body];
  const { cause, severity, also } = grade.truth;
  return {
    attempt,
    grade,
    called: answers.map((answer) => answer.cause),
    answers: answers.map(namedAnswer),
    truths: [{ cause, severity }, ...(also ? [also] : [])].map(truthView),
    findings: grade.findings.flatMap((finding) => gradedFinding(attempt, finding)),
    dangers: grade.safetyEvents.map((event) => dangerView(attempt, event)),
    routes: routeViews(attempt, grade),
    topics: topicViews(grade),
    ...computedAnew(history, grade, asked),
  };
}

/** What the stored grade does not hold: computed on the case, where it still can be. The call is made, so its truth may show. */
function computedAnew(
  history: History,
  grade: Grade,
  asked: Asked,
): Pick<DebriefView, 'skipped' | 'trial' | 'repaired' | 'hasFamily'> {
  if (isSuperseded(history.attempt)) return { skipped: [], trial: undefined, repaired: undefined, hasFamily: false };
  const theCase = caseOf(history.attempt);
  const skipped = grade.course ? skippedChecks(grade.course) : [];
  return {
    skipped,
    trial: typeof asked.try === 'string' ? tryCheck(theCase, history, skipped, asked.try) : undefined,
    repaired: repairPressures(theCase, grade.afterRepair, asked.at),
    hasFamily: familyOf(grade.truth, theCase.rig, catalogue()).length > 0,
  };
}

function topicViews({ truth }: Grade): DebriefView['topics'] {
  const causes = [truth.cause, truth.also?.cause].flatMap((id) => catalogue().causes.get(id ?? '') ?? []);
  const topics = new Map(causes.flatMap((cause) => topicsOf(cause, catalogue())).map((topic) => [topic.id, topic]));
  return [...topics.values()].map(({ id, text }) => ({ id, name: text.en.name }));
}

function namedAnswer({ cause, repair, proof }: Answer): NamedAnswer {
  const { causes, checks } = catalogue();
  return {
    cause: causes.get(cause)?.text.en.name ?? cause,
    repair: repairName(repair),
    proof: { ...proof, name: checks.get(proof.check)?.text.en.name ?? proof.check },
  };
}

/** What is wrong in a case, in words: for whoever may see it. */
export function truthView({ cause, severity }: { cause: string; severity: number }): TruthView {
  const found = catalogue().causes.get(cause);
  return {
    cause,
    severity,
    name: found?.text.en.name ?? cause,
    how: found?.text.en.how ?? '',
    element: found?.element ?? null,
    repairs: (found?.repairs ?? []).map(({ id, minutes, parts, text }) => ({
      id,
      name: text.en,
      minutes,
      parts: parts.map((part) => part.text.en),
    })),
  };
}

export function repairName(id: string): string {
  for (const { repairs } of catalogue().causes.values()) {
    const found = repairs.find((repair) => repair.id === id);
    if (found) return found.text.en;
  }
  return id;
}

function gradedFinding({ readings }: AttemptView, grade: FindingGrade): GradedFinding[] {
  return readings.flatMap((reading) =>
    reading.items.filter(({ finding }) => finding?.seq === grade.seq).map((item) => ({ reading, item, grade })),
  );
}

function dangerView({ readings }: AttemptView, event: SafetyEvent): DangerView {
  const reading = readings.find(({ seq }) => seq === event.seq);
  const known = catalogue().checks.get(reading?.check.id ?? '')?.mistakes ?? [];
  const made = known.filter((mistake) => reading && ledTo(mistake, reading, event));
  return { event, reading, mistakes: made.map(({ text }) => text.en) };
}

const CONSEQUENCES: Record<SafetyEvent['code'], Mistake['consequence']> = {
  'instrument-destroyed': 'instrument-destroyed',
  'high-pressure-jet': 'jet',
  // Whether the gauge survived it was luck.
  'cranked-low-range': 'instrument-destroyed',
};

/** Whether a known mistake is what was made: with its instrument and in its condition, where it names them. */
export function ledTo(
  { consequence, instrument, condition }: Mistake,
  reading: Pick<ReadingView, 'condition' | 'instrument'>,
  { code }: Pick<SafetyEvent, 'code'>,
): boolean {
  if (consequence !== CONSEQUENCES[code]) return false;
  if (instrument !== undefined && instrument !== reading.instrument.id) return false;
  return condition === undefined || condition === reading.condition;
}
