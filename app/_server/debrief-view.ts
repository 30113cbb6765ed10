import type { Mistake } from '@/lib/checks/check';
import type { Answer, CallAct } from '@/lib/grading/acts';
import type { FindingGrade, Grade, SafetyEvent } from '@/lib/grading/grade';
import { type AttemptView, attemptView, type ReadingItem, type ReadingView } from './attempt-view';
import { catalogue } from './catalogue';
import { type History, readHistory } from './history';

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
}

/** What a debrief shows. `open` while the call is not made; undefined when the attempt is missing or someone else's. */
export async function readDebriefView(learnerId: string, attemptId: string): Promise<DebriefView | 'open' | undefined> {
  const history = await readHistory(learnerId, attemptId);
  if (!history) return undefined;
  return history.call ? debriefView(history, history.call) : 'open';
}

function debriefView(history: History, { body, grade }: NonNullable<History['call']>): DebriefView {
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
  };
}

function namedAnswer({ cause, repair, proof }: Answer): NamedAnswer {
  const { causes, checks } = catalogue();
  return {
    cause: causes.get(cause)?.text.en.name ?? cause,
    repair: repairName(repair),
    proof: { ...proof, name: checks.get(proof.check)?.text.en.name ?? proof.check },
  };
}

function truthView({ cause, severity }: { cause: string; severity: number }): TruthView {
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
