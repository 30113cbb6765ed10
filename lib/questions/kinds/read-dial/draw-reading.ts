import type { Catalogue } from '../../../catalogue';
import type { Check, Quantity } from '../../../checks/check';
import type { Rig } from '../../../rig/rig';
import type { Draw } from '../../kind';
import { checksOn } from '../../shared/checks-on';
import { drawAgain } from '../../shared/draw-again';
import type { ReadDialRanges } from './ranges';
import { isRuled, type Ruled, scalePlace, tidy } from './scale-place';

/** A ruled gauge, what it is hooked up for, and where its needle stands. */
export interface DialReading {
  check: Check;
  quantity: Quantity;
  gauge: Ruled;
  /** In the gauge's unit, a whole number of half divisions. */
  value: number;
  /** Half the needle's swing; undefined where it stands still. */
  flutter: number | undefined;
}

/** Every gauge as often as any other, whatever it is used for. */
export function drawReading({ rig, topic, ranges, catalogue, stream }: Draw<ReadDialRanges>): DialReading {
  const uses = usesOn(rig, catalogue, topic);
  const gauge = stream('gauge').pick([...new Set(uses.map((use) => use.gauge))]);
  const use = stream('check').pick(uses.filter((one) => one.gauge === gauge));
  return drawAgain(stream, (tried) => {
    const { range, scale, resolution } = gauge;
    const halves = Math.round((2 * (range.max - range.min)) / scale.minor);
    const value = tidy(range.min + (1 + Math.floor(tried('value').between(0, halves - 1))) * (scale.minor / 2));
    const swings = gauge.display === 'dial' && tried('swings').next() < ranges.swingShare;
    const steps = Math.round(tried('swing').between(...ranges.swingSteps));
    const flutter = swings ? tidy(steps * resolution) : undefined;
    if (scalePlace(value, gauge).divisions === 0) return undefined;
    if (flutter && (value - flutter < range.min || value + flutter > range.max)) return undefined;
    return { ...use, value, flutter };
  });
}

function usesOn(rig: Rig, catalogue: Catalogue, topic: string | undefined) {
  const named = topic === 'instruments-and-uncertainty' ? undefined : topic;
  return checksOn(rig, catalogue, named).flatMap((check) =>
    check.instruments.flatMap((id) => {
      const gauge = catalogue.gauges.get(id);
      const [quantity] = check.quantities;
      return gauge && quantity && isRuled(gauge) ? [{ check, quantity, gauge }] : [];
    }),
  );
}
