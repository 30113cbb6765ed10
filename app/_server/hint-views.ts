import type { HintReason, ReasonedHint } from '@/lib/coaching/hint';
import type { ConditionId } from '@/lib/rig/condition';
import { catalogue } from './catalogue';
import { hintStands } from './decide-hint';
import type { History } from './history';

/** A hint as it was given, in names. */
export interface HintView {
  seq: number;
  /** Null where nothing was left to hint at. */
  next: { check: { id: string; name: string }; condition: ConditionId; instrument: string; why: HintReason } | null;
  /** Nothing has been read since. */
  stands: boolean;
}

export function hintViews({ acts }: Pick<History, 'acts'>): HintView[] {
  const hints = acts.filter((act): act is ReasonedHint & { seq: number } => act.kind === 'hint');
  const standing = hintStands(acts) ? hints.at(-1) : undefined;
  return hints.map((hint) => ({ seq: hint.seq, next: nextOf(hint), stands: hint === standing }));
}

function nextOf({ next, why }: ReasonedHint): HintView['next'] {
  if (!next || !why) return null;
  const { checks, gauges } = catalogue();
  return {
    check: { id: next.check, name: checks.get(next.check)?.text.en.name ?? next.check },
    condition: next.condition,
    instrument: gauges.get(next.instrument)?.text.en.name ?? next.instrument,
    why,
  };
}
