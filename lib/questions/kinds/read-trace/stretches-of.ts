import type { ShownLine } from '../../../checks/shown';
import type { Rig } from '../../../rig/rig';
import type { TraceId } from '../../../rig/traces/trace';
import type { Stretch } from '../../figure';

/** Every stretch is so much of the recording at least, to be told from its neighbours. */
const NARROWEST = 0.05;

/**
 * The stretches that a recording falls into, by what is done and by what the sound rig does: the same whatever is wrong. None
 * where the sound rig does not get as far as it should.
 */
export function stretchesOf(trace: TraceId, rig: Rig, [sound]: readonly ShownLine[]): Stretch[] {
  const end = sound?.times[sound.times.length - 1];
  if (!sound || end === undefined) return [];
  const cuts = [0, ...cutsOf(trace, rig, sound, end).map((cut) => rounded(cut, end)), end];
  const widths = cuts.slice(1).map((cut, index) => cut - (cuts[index] as number));
  if (cuts.length < 4 || widths.some((width) => width < NARROWEST * end - 1e-9)) return [];
  return widths.map((_, index) => ({
    id: String.fromCharCode(97 + index),
    from: cuts[index] as number,
    to: cuts[index + 1] as number,
  }));
}

function cutsOf(trace: TraceId, { traces, injectionEnableMpa }: Rig, sound: ShownLine, end: number): number[] {
  switch (trace) {
    case 'prime': {
      const { onSeconds: on, heldAfterSeconds: held } = traces.prime;
      // The build-up is over long before the pump stops.
      return [Math.max(on / 12, NARROWEST * end), on / 2, on, on + 1.5 * held];
    }
    case 'crank': {
      const rises = timeAt(sound, 1);
      const enables = timeAt(sound, injectionEnableMpa);
      if (rises === undefined || enables === undefined) return [];
      // Ahead of the rise, so that where it begins lies inside a stretch.
      return [0.8 * rises, rises + 0.3 * (enables - rises), enables, (enables + end) / 2];
    }
    case 'snap': {
      const { pedalAt, rampSeconds } = traces.snap;
      // The command is at its end when the engine is half-way up.
      return [0, 0.3, 0.5, 1, 2].map((share) => pedalAt + share * rampSeconds);
    }
    case 'decay':
      return [end / 12, end / 4, end / 2];
    case 'tank-vacuum':
      return [];
  }
}

function timeAt({ times, values }: ShownLine, level: number): number | undefined {
  return times[values.findIndex((value) => value >= level)];
}

/** To a twentieth of a second on short recordings, to a second on long ones. */
function rounded(time: number, end: number): number {
  const step = end < 20 ? 0.05 : 1;
  return Number((Math.round(time / step) * step).toFixed(2));
}
