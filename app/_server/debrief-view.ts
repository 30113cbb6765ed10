import type { CallAct } from '@/lib/grading/acts';
import type { FindingGrade, Grade } from '@/lib/grading/grade';
import { type AttemptView, attemptView, type ReadingItem, type ReadingView } from './attempt-view';
import { catalogue } from './catalogue';
import { type History, readHistory } from './history';

/** A finding with what it judged and how it was graded. */
export interface GradedFinding {
  reading: ReadingView;
  item: ReadingItem;
  grade: FindingGrade;
}

export interface DebriefView {
  attempt: AttemptView;
  call: { cause: string; repair: string; proof: CallAct['proof'] & { name: string } };
  /** As it was given at the call; never computed anew. */
  grade: Grade;
  truth: { cause: string; name: string; how: string; element: string | null; repairs: readonly string[] };
  findings: readonly GradedFinding[];
}

/** What a debrief shows. `open` while the call is not made; undefined when the attempt is missing or someone else's. */
export async function readDebriefView(learnerId: string, attemptId: string): Promise<DebriefView | 'open' | undefined> {
  const history = await readHistory(learnerId, attemptId);
  if (!history) return undefined;
  return history.call ? debriefView(history, history.call) : 'open';
}

function debriefView(history: History, { body, grade }: NonNullable<History['call']>): DebriefView {
  const { causes, checks } = catalogue();
  const attempt = attemptView(history);
  const truth = causes.get(grade.truth.cause);
  return {
    attempt,
    grade,
    call: {
      cause: causes.get(body.cause)?.text.en.name ?? body.cause,
      repair: repairName(body.repair),
      proof: { ...body.proof, name: checks.get(body.proof.check)?.text.en.name ?? body.proof.check },
    },
    truth: {
      cause: grade.truth.cause,
      name: truth?.text.en.name ?? grade.truth.cause,
      how: truth?.text.en.how ?? '',
      element: truth?.element ?? null,
      repairs: truth?.repairs.map(({ text }) => text.en) ?? [],
    },
    findings: grade.findings.flatMap((finding) => gradedFinding(attempt, finding)),
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
