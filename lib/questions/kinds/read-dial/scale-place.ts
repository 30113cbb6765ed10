import type { Gauge } from '../../../gauges/gauge';

export type Scale = NonNullable<Gauge['scale']>;

/** A gauge that is read by eye between marks. */
export interface Ruled extends Gauge {
  scale: Scale;
}

export function isRuled(gauge: Gauge): gauge is Ruled {
  return (gauge.display === 'dial' || gauge.display === 'cylinder') && gauge.scale !== undefined;
}

/** Where a value stands on its scale: so many smallest divisions, halves among them, past a numbered mark. */
export interface ScalePlace {
  number: number;
  divisions: number;
}

/** Counted from the numbered mark that is nearer to the start of the scale, as one reads along it. */
export function scalePlace(value: number, { scale: { major, minor }, range }: Ruled): ScalePlace {
  const halves = Math.round((2 * (value - range.min)) / minor);
  const perNumber = Math.round((2 * major) / minor);
  return {
    number: tidy(range.min + Math.floor(halves / perNumber) * major),
    divisions: (halves % perNumber) / 2,
  };
}

/** Drops binary dust. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
