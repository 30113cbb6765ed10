import type { Catalogue } from '../../../catalogue';
import type { ShownLine } from '../../../checks/shown';
import { standardUncertainty } from '../../../gauges/uncertainty';
import { fromSi } from '../../../units';
import type { Stretch } from '../../figure';
import { causesOn, type Fault } from '../../shared/broken-day';
import type { RigDay } from '../../shared/rig-day';
import { type Band, bandOf, farthest, outside, type Tolerance } from './departure';
import type { ReadTraceRanges } from './ranges';
import { linesWith, linesWithout, type Recorded } from './recording';
import { stretchesOf } from './stretches-of';

/** A trace with something wrong with the rig. The first of the lines is the one that is judged. */
export interface Picture {
  fault: Fault;
  lines: readonly ShownLine[];
  /** Where it lies outside of the sound trace, point by point. */
  apart: readonly number[];
  /** Where it is farthest from it. */
  farthest: number;
  /** It cannot be told from the sound trace. */
  hidden: boolean;
  /** It plainly can. */
  plain: boolean;
  /** Where it goes wrong first, where that is beyond dispute: by the index of the stretch and of the point. */
  wrong: { stretch: number; point: number } | undefined;
}

/** One trace of a rig on a day: sound, and with everything that could be wrong. */
export interface Album {
  day: RigDay;
  recorded: Recorded;
  sound: readonly ShownLine[];
  stretches: readonly Stretch[];
  tolerance: Tolerance;
  pictures: readonly Picture[];
  /** All that a cause can do to the trace, from nothing to its severest, by its id. */
  reach: ReadonlyMap<string, Band>;
}

/** Of what is plain: less is nothing, more is beyond dispute. */
const NOTHING = 0.5;
const BEYOND_DISPUTE = 2;
/** Where a trace goes wrong lies so far inside its stretch, of its length. */
const INSIDE = 0.1;

const albums = new WeakMap<RigDay, Map<string, Album | undefined>>();

/** Kept, since a trace takes milliseconds. Undefined where the sound rig cannot be recorded so. */
export function albumOf(
  day: RigDay,
  recorded: Recorded,
  ranges: ReadTraceRanges,
  catalogue: Catalogue,
): Album | undefined {
  const known = albums.get(day) ?? new Map<string, Album | undefined>();
  albums.set(day, known);
  const name = `${recorded.trace} ${JSON.stringify(ranges)}`;
  if (!known.has(name)) known.set(name, makeAlbum(day, recorded, ranges, catalogue));
  return known.get(name);
}

function makeAlbum(day: RigDay, recorded: Recorded, ranges: ReadTraceRanges, catalogue: Catalogue): Album | undefined {
  const sound = linesWithout(day, recorded);
  const [line] = sound ?? [];
  if (!sound || !line) return undefined;
  const stretches = stretchesOf(recorded.trace, day.rig, sound);
  const tolerance = toleranceOf(recorded, sound, ranges);
  const band = bandOf([line], tolerance.slack);
  const pictures = causesOn(day, catalogue).flatMap((cause) =>
    ranges.degrees.flatMap((degree) => {
      const { min, max } = cause.severity;
      const fault = { cause, severity: Math.round(1000 * (min + degree * (max - min))) / 1000 };
      // A cause without degrees would be taken for each of them.
      if (min === max && degree !== ranges.degrees[0]) return [];
      const lines = linesWith(day, recorded, fault);
      return lines ? [pictureOf(fault, lines, band, stretches, tolerance.plain)] : [];
    }),
  );
  return { day, recorded, sound, stretches, tolerance, pictures, reach: reachOf(line, pictures, tolerance.slack) };
}

function reachOf(sound: ShownLine, pictures: readonly Picture[], slack: number): Map<string, Band> {
  const ids = new Set(pictures.map(({ fault }) => fault.cause.id));
  const linesOf = (id: string) =>
    pictures.flatMap(({ fault, lines: [line] }) => (fault.cause.id === id && line ? [line] : []));
  return new Map([...ids].map((id) => [id, bandOf([sound, ...linesOf(id)], slack)]));
}

function toleranceOf({ instrument }: Recorded, [sound]: readonly ShownLine[], ranges: ReadTraceRanges): Tolerance {
  if (!sound) return { plain: 0, slack: 0 };
  const { values, times, unit } = sound;
  const span = Math.max(...values) - Math.min(...values);
  const recorder = fromSi(standardUncertainty(instrument, span), unit) - fromSi(0, unit);
  return {
    plain: Math.max(2.5 * Math.SQRT2 * recorder, ranges.plainShare * span),
    slack: ranges.slackShare * (times[times.length - 1] ?? 0),
  };
}

function pictureOf(
  fault: Fault,
  lines: readonly ShownLine[],
  sound: Band,
  stretches: readonly Stretch[],
  plain: number,
): Picture {
  const [line] = lines;
  if (!line) throw new RangeError('A trace has a line');
  const apart = outside(line, sound);
  const most = farthest(apart);
  const distance = Math.abs(apart[most] ?? 0);
  return {
    fault,
    lines,
    apart,
    farthest: most,
    hidden: distance < NOTHING * plain,
    plain: distance >= BEYOND_DISPUTE * plain,
    wrong: firstWrong(line.times, apart, stretches, plain),
  };
}

/** The stretch and point where a trace first leaves the sound one; undefined where two stretches might be named. */
function firstWrong(times: readonly number[], apart: readonly number[], stretches: readonly Stretch[], plain: number) {
  const point = apart.findIndex((one) => Math.abs(one) > plain);
  const time = times[point];
  if (time === undefined) return undefined;
  const stretch = stretches.findIndex(({ from, to }) => time >= from && time < to);
  const found = stretches[stretch];
  if (!found) return undefined;
  const margin = INSIDE * (found.to - found.from);
  const inside = (found.from === 0 || time >= found.from + margin) && time <= found.to - margin;
  const most = (from: number, to: number) =>
    Math.max(0, ...apart.filter((_, index) => (times[index] ?? 0) >= from && (times[index] ?? 0) < to).map(Math.abs));
  const clear = most(found.from, found.to) >= BEYOND_DISPUTE * plain && most(0, found.from) < NOTHING * plain;
  return inside && clear ? { stretch, point } : undefined;
}
