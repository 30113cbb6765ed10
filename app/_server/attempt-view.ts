import type { Case } from '@/lib/cases/case';
import { mayBeTwo } from '@/lib/cases/case-code';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { Shown, ShownLine } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import { type FindingAct, instrumentsDestroyed, type ReadingAct } from '@/lib/grading/acts';
import type { ConditionId } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import type { WorkOrder } from '@/lib/symptoms/work-order';
import { catalogue } from './catalogue';
import { type HintView, hintViews } from './hint-views';
import { caseOf, type History, isSuperseded, readHistory } from './history';
import { intakeGoesOn } from './intakes/clock';
import type { Desk } from './permit';
import { type RigChoices, rigChoices } from './rig-choices';
import { goesOn } from './turns/turn-clock';
import { isUntold, isUntoldWithin, tellsAt } from './turns/untold';

export type FindingView = FindingAct & { seq: number };

/** One quantity of a reading, with the finding once it is written. */
export interface ReadingItem {
  quantity: string;
  label: string;
  shown: Shown;
  vacuum: boolean;
  /** Words for what an eye tells apart, from 0 up. */
  grades: readonly string[] | undefined;
  /** In the unit in which it shows this quantity; undefined where content has dropped the instrument. */
  gauge: Gauge | undefined;
  finding: FindingView | undefined;
}

export interface ReadingView {
  seq: number;
  check: { id: string; name: string; severalQuantities: boolean; cautions: readonly string[] };
  condition: ConditionId;
  instrument: { id: string; name: string };
  minutes: number;
  items: readonly ReadingItem[];
  /** What a recorder drew: the same for every quantity that is read off it. */
  lines: readonly ShownLine[];
}

/** What somebody at the vehicle is told. The tank has to be looked into, and a cylinder that is at fault found. */
export type ToldSetting = Omit<Setting, 'tankLevel' | 'cylinder'>;

/** The part of an attempt's case that a learner may see at any time. */
export interface CaseFace {
  workOrder: WorkOrder;
  setting: ToldSetting;
  fuel: string;
  rig: Rig;
  /** Two causes may be at work. */
  mayBeTwo: boolean;
  choices: RigChoices;
}

/** The turn that an attempt is part of. */
export interface TurnFace {
  id: string;
  title: string;
  /** When what came of it is told; null where it may be told already. */
  tellsAt: Date | null;
}

/** Everything pages may know of an attempt before the call. It is built here, and the truth is not in it. */
export interface AttemptView {
  id: string;
  /** Null while nothing may be told: by its code, anybody could work on the case for practice and read its debrief. */
  code: string | null;
  /** `over`: its turn takes nothing any more, and no call was made. */
  state: 'open' | 'called' | 'superseded' | 'over';
  turn: TurnFace | null;
  /** The new-hire check that it is part of, and whether it is still to be finished. */
  intake: { id: string; open: boolean } | null;
  startedAt: Date;
  /** Null when the attempt is superseded: its case can no longer be computed as it was. */
  face: CaseFace | null;
  readings: readonly ReadingView[];
  /** Hints may be asked for while it is open. */
  coached: boolean;
  hints: readonly HintView[];
  minutes: number;
  destroyed: ReadonlySet<string>;
}

/** A learner's own attempt, without its truth; undefined when it is missing or someone else's. */
export async function readAttemptView(desk: Desk, attemptId: string): Promise<AttemptView | undefined> {
  const history = await readHistory(desk, attemptId);
  return history && attemptView(history);
}

export function attemptView(history: History, now = new Date()): AttemptView {
  const { attempt, acts } = history;
  const turn = turnFace(history, now);
  const superseded = isSuperseded(attempt);
  const readings = readingViews(history);
  return {
    id: attempt.id,
    code: isUntoldWithin(history, now) ? null : attempt.caseCode,
    state: stateOf(history, now),
    turn,
    intake: history.intake ? { id: history.intake.id, open: history.intake.finishedAt === null } : null,
    startedAt: attempt.createdAt,
    face: superseded ? null : caseFace(history),
    readings,
    coached: attempt.coached,
    hints: hintViews(history),
    minutes: readings.reduce((sum, { minutes }) => sum + minutes, 0),
    destroyed: instrumentsDestroyed(acts),
  };
}

function stateOf({ attempt, call, turn, intake }: History, now: Date): AttemptView['state'] {
  if (call) return 'called';
  if (isSuperseded(attempt)) return 'superseded';
  const over = (turn && !goesOn(turn.turn, now)) || (intake && !intakeGoesOn(intake, now));
  return over ? 'over' : 'open';
}

function turnFace({ turn: at }: History, now: Date): TurnFace | null {
  if (!at) return null;
  return { id: at.turn.id, title: at.assignment.title, tellsAt: isUntold(at, now) ? tellsAt(at) : null };
}

function caseFace({ attempt }: History): CaseFace {
  return faceOfCase(caseOf(attempt));
}

/** What of a case may be seen before the call, field by field. */
export function faceOfCase({ workOrder, setting, rig, spec }: Case): CaseFace {
  const { tankLevel: _, cylinder: __, ...told } = setting;
  const fuel = catalogue().fuels.get(setting.fuel)?.text.en ?? setting.fuel;
  return { workOrder, setting: told, fuel, rig, mayBeTwo: mayBeTwo(spec), choices: rigChoices(rig, catalogue()) };
}

function readingViews({ acts }: History): ReadingView[] {
  const findings = acts.filter((act): act is FindingView => act.kind === 'finding');
  return acts
    .filter((act): act is ReadingAct & { seq: number } => act.kind === 'reading')
    .map((reading) => {
      const check = catalogue().checks.get(reading.check);
      return {
        seq: reading.seq,
        check: {
          id: reading.check,
          name: check?.text.en.name ?? reading.check,
          severalQuantities: reading.shown.length > 1,
          cautions: check?.cautions ?? [],
        },
        condition: reading.condition,
        instrument: {
          id: reading.instrument,
          name: catalogue().gauges.get(reading.instrument)?.text.en.name ?? reading.instrument,
        },
        minutes: check?.minutes ?? 0,
        items: reading.shown.map((shown) => readingItem(reading, shown, findings)),
        lines: recordedIn(reading.shown),
      };
    });
}

function recordedIn(shown: readonly Shown[]): readonly ShownLine[] {
  return shown.flatMap((one) => ('lines' in one && one.lines ? [one.lines] : []))[0] ?? [];
}

function readingItem(reading: ReadingAct & { seq: number }, shown: Shown, findings: FindingView[]): ReadingItem {
  const check = catalogue().checks.get(reading.check);
  const quantity = check?.quantities.find(({ id }) => id === shown.quantity);
  const instrument = catalogue().gauges.get(reading.instrument);
  return {
    quantity: shown.quantity,
    label: check?.text.en.quantities[shown.quantity] ?? shown.quantity,
    shown,
    vacuum: quantity?.measures === 'vacuum',
    grades: quantity?.grades && check?.text.en.grades?.[shown.quantity],
    gauge: instrument && quantity ? gaugeFor(instrument, quantity) : instrument,
    finding: findings.find((finding) => finding.reading === reading.seq && finding.quantity === shown.quantity),
  };
}
