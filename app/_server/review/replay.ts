import type { Area } from '@/lib/areas';
import { areas } from '@/lib/areas';
import type { AreaShares, FindingGrade, Note } from '@/lib/grading/grade';
import type { AttemptView, ReadingItem, ReadingView } from '../attempt-view';
import type { DebriefView } from '../debrief-view';
import type { HintView } from '../hint-views';
import type { History } from '../history';

/** One act, with what was computed for it where the call is made. */
export interface ReplayStep {
  seq: number;
  /** Shop minutes that had gone by when it was done. */
  minute: number;
  what:
    | { kind: 'reading'; reading: ReadingView }
    | { kind: 'finding'; reading: ReadingView; item: ReadingItem; grade: FindingGrade | undefined }
    | { kind: 'hint'; hint: HintView }
    | { kind: 'call' };
  /** What was most believed after it, the likeliest area first; none where it was not computed. */
  belief: readonly { area: Area; share: number }[];
  /** Reasons for points that name this act. */
  notes: readonly Note[];
}

/** More areas than one looks at. */
const BELIEVED = 3;

/**
 * An attempt act by act.
 *
 * @param debrief  Undefined while the call is not made: then there is nothing but what was done.
 */
export function replayOf(history: History, view: AttemptView, debrief: DebriefView | undefined): ReplayStep[] {
  const grade = debrief?.grade;
  let minute = 0;
  const steps = history.acts.flatMap((act): ReplayStep[] => {
    const { seq } = act;
    const notes = (grade?.notes ?? []).filter(({ values }) => (values.finding ?? values.seq) === seq);
    if (act.kind === 'reading') {
      const reading = view.readings.find((one) => one.seq === seq);
      if (!reading) return [];
      minute += reading.minutes;
      const after = grade?.course?.steps.find((step) => step.seq === seq)?.areas;
      return [{ seq, minute, what: { kind: 'reading', reading }, belief: leading(after), notes }];
    }
    if (act.kind === 'hint') {
      const hint = view.hints.find((one) => one.seq === seq);
      return hint ? [{ seq, minute, what: { kind: 'hint', hint }, belief: [], notes }] : [];
    }
    const judged = itemOf(view, seq);
    if (!judged) return [];
    const found = grade?.findings.find((finding) => finding.seq === seq);
    return [{ seq, minute, what: { kind: 'finding', ...judged, grade: found }, belief: leading(found?.areas), notes }];
  });
  if (!history.call) return steps;
  const notes = (grade?.notes ?? []).filter(({ part }) => part === 'call');
  return [...steps, { seq: history.call.seq, minute, what: { kind: 'call' }, belief: [], notes }];
}

function itemOf({ readings }: AttemptView, seq: number): { reading: ReadingView; item: ReadingItem } | undefined {
  for (const reading of readings) {
    const item = reading.items.find(({ finding }) => finding?.seq === seq);
    if (item) return { reading, item };
  }
  return undefined;
}

function leading(shares: AreaShares | undefined): ReplayStep['belief'] {
  if (!shares) return [];
  return areas
    .map((area) => ({ area, share: shares[area] }))
    .sort((one, other) => other.share - one.share)
    .slice(0, BELIEVED);
}
