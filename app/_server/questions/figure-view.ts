import type { UnitChoice } from '@/app/_ui/display-choices';
import type { Catalogue } from '@/lib/catalogue';
import type { Shown, ShownLine } from '@/lib/checks/shown';
import type { Verdict } from '@/lib/checks/verdict';
import type { Gauge } from '@/lib/gauges/gauge';
import type { Figure, ShownReading, Stretch, Target } from '@/lib/questions/figure';
import type { Line } from '@/lib/questions/line';
import type { ConditionId } from '@/lib/rig/condition';
import type { Drawing } from '@/lib/rig/drawing';
import type { LimitLine, Rig } from '@/lib/rig/rig';
import type { TroubleCode } from '@/lib/symptoms/work-order';
import { drawingOf } from '../drawings';
import { type LimitFacts, limitFacts } from '../limit-facts';
import type { LimitChoice } from '../rig-choices';
import type { Said } from './say';

/** What words and pictures are made from. */
export interface ViewContext {
  catalogue: Catalogue;
  units: UnitChoice;
  say: (line: Line) => Said;
}

/** Something marked on a drawing. */
export interface MarkView {
  /** Beside its ring; none where one alone is marked. */
  letter?: string;
  target: Target;
}

export interface DrawingView {
  rig: Rig;
  drawing: Drawing;
  names: boolean;
  /** Ports that are shown. */
  ports: readonly string[];
  marks: readonly MarkView[];
}

/** One quantity of a reading, as it stands on a job card. */
export interface ReadingLine {
  check: string;
  /** Named where the check reads more than one. */
  quantity: string | undefined;
  condition: ConditionId;
  instrument: string;
  gauge: Gauge;
  shown: Shown;
  grades: readonly string[] | undefined;
  /** None in what was asked before readings were given with their verdicts. */
  judged: { line: LimitLine; facts: LimitFacts; verdict: Verdict } | undefined;
}

export interface LetteredStretch extends Stretch {
  letter: string;
}

export interface TraceView {
  gauge: Gauge;
  lines: readonly ShownLine[];
  stretches: readonly LetteredStretch[];
  /** None in what was asked before it stood apart. */
  sound?: ShownLine | undefined;
}

export interface PictureView {
  /** Id of the upload. */
  picture: string;
  width: number;
  height: number;
  alt: string;
}

export interface LimitView extends LimitChoice {
  check: string;
}

/** A figure with the data that it draws. */
export type FigureView =
  | ({ figure: 'drawing' } & DrawingView)
  | { figure: 'instrument'; gauge: Gauge; shown: Shown; label: string; grades: readonly string[] | undefined }
  | ({ figure: 'trace' } & TraceView)
  | { figure: 'readings'; readings: readonly ReadingLine[] }
  | { figure: 'codes'; codes: readonly TroubleCode[] }
  | { figure: 'limits'; rig: string; limits: readonly LimitView[] }
  | { figure: 'scene'; facts: readonly Said[]; place?: DrawingView }
  | { figure: 'table'; head: readonly Said[]; rows: readonly (readonly Said[])[] }
  | ({ figure: 'picture' } & PictureView);

/** @throws RangeError when it names what content does not have. */
export function figureView(figure: Figure, context: ViewContext): FigureView {
  const { catalogue, say } = context;
  switch (figure.figure) {
    case 'drawing': {
      const marks = figure.marked.map((target, index) => ({ letter: letterOf(index), target }));
      return { figure: 'drawing', ...drawingView(figure.rig, catalogue, { ...figure, marks }) };
    }
    case 'instrument':
      return { figure: 'instrument', ...instrumentView(figure.instrument, figure.shown, catalogue) };
    case 'trace':
      return { figure: 'trace', ...traceView(figure, catalogue) };
    case 'readings':
      return { figure: 'readings', readings: figure.readings.map((reading) => readingLine(reading, catalogue)) };
    case 'codes':
      return { figure: 'codes', codes: figure.codes };
    case 'limits':
      return { figure: 'limits', ...limitsView(figure, catalogue) };
    case 'scene': {
      const facts = figure.facts.map(say);
      if (!figure.at) return { figure: 'scene', facts };
      const drawn = { names: true, ports: figure.at.what === 'port', marks: [{ target: figure.at }] };
      return { figure: 'scene', facts, place: drawingView(figure.rig, catalogue, drawn) };
    }
    case 'table':
      return { figure: 'table', head: figure.head.map(say), rows: figure.rows.map((row) => row.map(say)) };
    case 'picture':
      return figure;
  }
}

/** A, B, C … in the order shown. */
export function letterOf(index: number): string {
  return String.fromCharCode(65 + index);
}

export function drawingView(
  rigId: string,
  catalogue: Catalogue,
  { names, ports, marks }: { names: boolean; ports: boolean; marks: readonly MarkView[] },
): DrawingView {
  const rig = known(catalogue.rigs, rigId);
  const marked = marks.flatMap(({ target }) => (target.what === 'port' ? [target.of] : []));
  return { rig, drawing: drawingOf(rigId), names, ports: ports ? rig.ports.map(({ id }) => id) : marked, marks };
}

function instrumentView(instrument: string, shown: Shown, catalogue: Catalogue) {
  const gauge = setTo(known(catalogue.gauges, instrument), shown);
  const check = [...catalogue.checks.values()].find(
    ({ instruments, quantities }) =>
      instruments.includes(instrument) && quantities.some(({ id }) => id === shown.quantity),
  );
  return {
    gauge,
    shown,
    label: check?.text.en.quantities[shown.quantity] ?? gauge.text.en.name,
    grades: check?.text.en.grades?.[shown.quantity],
  };
}

/** The instrument in the unit in which it shows something. */
function setTo(gauge: Gauge, shown: Shown): Gauge {
  if (!('unit' in shown) || shown.unit === gauge.unit) return gauge;
  return { ...gauge, ...gauge.alsoReads?.find(({ unit }) => unit === shown.unit), unit: shown.unit };
}

function traceView(
  { instrument, lines, stretches, sound }: Extract<Figure, { figure: 'trace' }>,
  { gauges }: Catalogue,
): TraceView {
  return { gauge: known(gauges, instrument), lines, stretches: lettered(stretches), sound };
}

export function lettered(stretches: readonly Stretch[]): LetteredStretch[] {
  return stretches.map((stretch, index) => ({ ...stretch, letter: letterOf(index) }));
}

function readingLine(
  { check: id, condition, instrument, shown, judged }: ShownReading,
  catalogue: Catalogue,
): ReadingLine {
  const { quantities, text } = known(catalogue.checks, id);
  const gauge = known(catalogue.gauges, instrument);
  return {
    check: text.en.name,
    quantity: quantities.length > 1 ? text.en.quantities[shown.quantity] : undefined,
    condition,
    instrument: gauge.text.en.name,
    gauge: setTo(gauge, shown),
    shown,
    grades: text.en.grades?.[shown.quantity],
    judged: judged && judgedBy(judged, catalogue),
  };
}

function judgedBy({ rig, limit, verdict }: NonNullable<ShownReading['judged']>, catalogue: Catalogue) {
  const line = known(catalogue.rigs, rig).limits.find(({ id }) => id === limit);
  return line && { line, facts: limitFacts(catalogue, line), verdict };
}

function limitsView({ rig: rigId, limits }: Extract<Figure, { figure: 'limits' }>, catalogue: Catalogue) {
  const rig = known(catalogue.rigs, rigId);
  const lines = limits === undefined ? rig.limits : rig.limits.filter(({ id }) => limits.includes(id));
  return {
    rig: rig.text.en.name,
    limits: lines.map((line): LimitView => {
      const { quantities, text } = known(catalogue.checks, line.check);
      const quantity = quantities.length > 1 ? text.en.quantities[line.quantity] : undefined;
      return { line, check: text.en.name, quantity, facts: limitFacts(catalogue, line) };
    }),
  };
}

function known<T>(things: ReadonlyMap<string, T>, id: string): T {
  const found = things.get(id);
  if (found === undefined) throw new RangeError(`Content has no ${id}`);
  return found;
}
