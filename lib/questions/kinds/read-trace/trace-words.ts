import type { ShownLine } from '../../../checks/shown';
import type { Figure, Stretch } from '../../figure';
import type { Line, Value } from '../../line';
import { dayWords } from '../../shared/day-words';
import { exact } from '../../shared/exact';
import type { Album, Picture } from './album';

/** A value as the recorder draws it. */
function inUnit(value: number, { id, unit }: ShownLine): Value {
  return { quantity: Object.is(value, -0) ? 0 : value, unit, decimals: id === 'tank-vacuum' ? 2 : 1 };
}

export function seconds(time: number): Value {
  return exact(Number(time.toFixed(2)), 's');
}

/** What a line shows at a point. */
export function valueIn({ lines: [line] }: Pick<Picture, 'lines'>, point: number): Value {
  if (!line) throw new RangeError('A trace has a line');
  return inUnit(line.values[point] ?? 0, line);
}

/** What is recorded, to be held against the sound engine's trace beside it. */
export function stemWords(album: Album): Line[] {
  const { check, condition } = album.recorded;
  return [
    dayWords(album.day),
    {
      say: 'recorded',
      with: { check: { name: 'check', id: check.id }, condition: { name: 'condition', id: condition } },
    },
    { say: 'sound' },
  ];
}

/** Where stretches meet and half-way between; evenly where there are none. */
function referenceTimes({ stretches, sound: [line] }: Album): number[] {
  const end = line?.times[line.times.length - 1] ?? 0;
  if (stretches.length === 0) return [0, 0.25, 0.5, 0.75, 1].map((share) => share * end);
  return stretches.flatMap(({ from, to }) => [(from + to) / 2, to]);
}

/** The recording with, beside it, a few points of the sound engine's. */
export function traceFigure(album: Album, { lines }: Picture, stretches: readonly Stretch[]): Figure {
  return { figure: 'trace', instrument: album.recorded.instrument.id, lines, stretches, sound: soundPoints(album) };
}

function soundPoints(album: Album): ShownLine {
  const [line] = album.sound;
  if (!line) throw new RangeError('A trace has a line');
  const { id, unit, times, values } = line;
  const at = referenceTimes(album);
  const points = at.map((time) => times.findIndex((one) => one >= time - 1e-9));
  return { id, unit, times: at, values: points.map((point) => values[point] ?? values[values.length - 1] ?? 0) };
}

/** What is wrong, and what that does. */
export function faultWords({ fault: { cause } }: Picture): Line {
  return { say: 'wrong', with: { cause: { name: 'cause', id: cause.id }, how: { name: 'cause-how', id: cause.id } } };
}

/** What counts as a departure. */
export function ruleWords({ tolerance: { plain, slack }, sound: [line] }: Album): Line {
  return {
    say: 'rule',
    with: { plain: { quantity: plain, unit: line?.unit ?? 'MPa' }, slack: { quantity: slack, unit: 's' } },
  };
}

/** What the trace shows at a point, beside the sound one. */
export function beside(say: string, album: Album, picture: Picture, point: number): Line {
  const time = album.sound[0]?.times[point] ?? 0;
  return {
    say,
    with: { time: seconds(time), here: valueIn(picture, point), sound: valueIn({ lines: album.sound }, point) },
  };
}
