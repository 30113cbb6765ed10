import type { Law } from '@/lib/hydraulics/elements/element';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import type { Network } from '@/lib/hydraulics/network';
import type { Store } from '@/lib/hydraulics/store';
import type { KilogramPerCubicMetre, Pascal, Second } from '@/lib/units';

/**
 * A common rail with full data: national contest in mathematical modelling (CUMCM) 2019, problem A, question 1, statement
 * and annex 3 (elasticity over pressure, every second to fourth row of ten). In SI; the contest's units are mm, ms, MPa
 * and mg. Volumes are counted at the density of the supply.
 */
export const SUPPLY: Pascal = 160e6;
export const BEGINNING: Pascal = 100e6;
/** Bore 10 mm, length 500 mm. */
export const RAIL_VOLUME = Math.PI * 0.005 ** 2 * 0.5;
export const SHOT_PERIOD: Second = 0.1;
/** Between two openings of the inlet. */
export const REST: Second = 0.01;

const DENSITY_AT_BEGINNING: KilogramPerCubicMetre = 850;
/**
 * Diameter 1.4 mm, C = 0.85. The contest puts MPa and mg/mm³ under the root and takes mm³/ms from it, which is short of
 * √1000 = √(1 MPa / (1 mg/mm³)) in mm/ms; its data are made for that, so the coefficient takes it up here.
 */
const INLET = { area: Math.PI * 0.0007 ** 2, flowCoefficient: 0.85 / Math.sqrt(1000) };
/** A shot is a trapezoid: corners, and the flow between the inner two. */
const SHOT = { corners: [0, 0.2e-3, 2.2e-3, 2.4e-3], flow: 20e-6 } as const;

/** MPa, MPa. */
const elasticity: readonly (readonly [number, number])[] = [
  [0, 1538.4],
  [5, 1563],
  [10, 1588.2],
  [20, 1640.3],
  [40, 1752.5],
  [50, 1813],
  [60, 1876.8],
  [80, 2015.5],
  [100, 2171.4],
  [120, 2348.4],
  [140, 2551.2],
  [160, 2786.4],
  [180, 3063],
  [200, 3393.4],
];

/** Second derivatives of the natural cubic spline through the table, by Thomas's elimination. */
function splineCurvatures(points: typeof elasticity): number[] {
  const x = (index: number) => points[index]?.[0] ?? Number.NaN;
  const y = (index: number) => points[index]?.[1] ?? Number.NaN;
  const last = points.length - 1;
  const above: number[] = [0];
  const right: number[] = [0];
  for (let i = 1; i < last; i++) {
    const [before, after] = [x(i) - x(i - 1), x(i + 1) - x(i)];
    const pivot = 2 * (before + after) - before * (above[i - 1] ?? 0);
    const bend = 6 * ((y(i + 1) - y(i)) / after - (y(i) - y(i - 1)) / before);
    above[i] = after / pivot;
    right[i] = (bend - before * (right[i - 1] ?? 0)) / pivot;
  }
  const curvatures = new Array<number>(points.length).fill(0);
  for (let i = last - 1; i > 0; i--) curvatures[i] = (right[i] ?? 0) - (above[i] ?? 0) * (curvatures[i + 1] ?? 0);
  return curvatures;
}

const curvatures = splineCurvatures(elasticity);

/** E, by the natural cubic spline through the table. */
export function elasticityAt(pressure: Pascal): Pascal {
  const p = pressure / 1e6;
  const upper = elasticity.findIndex(([at]) => at > p);
  const right = upper < 0 ? elasticity.length - 1 : Math.max(1, upper);
  const [x0, y0] = elasticity[right - 1] ?? [0, 0];
  const [x1, y1] = elasticity[right] ?? [0, 0];
  const width = x1 - x0;
  const [a, b] = [(x1 - p) / width, (p - x0) / width];
  const bend = (a ** 3 - a) * (curvatures[right - 1] ?? 0) + (b ** 3 - b) * (curvatures[right] ?? 0);
  return 1e6 * (a * y0 + b * y1 + (bend * width * width) / 6);
}

const CELL: Pascal = 0.1e6;
const CELLS = 2000;
/** ln ρ/ρ(0) at every tenth of a MPa: ∫ dp/E by Simpson's rule. */
const logDensity = new Float64Array(CELLS + 1);
/** Its slope, per cell. */
const logDensitySlope = Float64Array.from(logDensity, (_zero, cell) => CELL / elasticityAt(cell * CELL));
for (let cell = 0; cell < CELLS; cell++) {
  const [from = 0, to = 0] = logDensitySlope.subarray(cell, cell + 2);
  const middle = CELL / elasticityAt((cell + 0.5) * CELL);
  logDensity[cell + 1] = (logDensity[cell] ?? 0) + (from + 4 * middle + to) / 6;
}

interface Density {
  density: KilogramPerCubicMetre;
  perPressure: number;
}

/**
 * ρ from dp = (E/ρ) dρ and 850 kg/m³ at 100 MPa, between the points by Hermite's cubic in ln ρ. Range 0…200 MPa.
 */
function findDensity(pressure: Pascal, result: Density): void {
  const cell = Math.min(CELLS - 1, Math.max(0, Math.floor(pressure / CELL)));
  const t = pressure / CELL - cell;
  const first = logDensitySlope[cell] as number;
  const last = logDensitySlope[cell + 1] as number;
  const rise = (logDensity[cell + 1] as number) - (logDensity[cell] as number);
  const [square, cube] = [3 * rise - 2 * first - last, first + last - 2 * rise];
  const logarithm = (logDensity[cell] as number) + t * (first + t * (square + t * cube));
  result.density = DENSITY_AT_BEGINNING * Math.exp(logarithm - (logDensity[BEGINNING / CELL] as number));
  result.perPressure = (result.density * (first + t * (2 * square + t * 3 * cube))) / CELL;
}

export function densityAt(pressure: Pascal): KilogramPerCubicMetre {
  const found: Density = { density: 0, perPressure: 0 };
  findDensity(pressure, found);
  return found.density;
}

const SUPPLY_DENSITY = densityAt(SUPPLY);

/** The rail's volume times how much denser its fuel is than at the beginning, at supply density. */
export function railStore(): Store {
  const found: Density = { density: 0, perPressure: 0 };
  return (pressure, result) => {
    findDensity(pressure, found);
    result.volume = (RAIL_VOLUME * (found.density - DENSITY_AT_BEGINNING)) / SUPPLY_DENSITY;
    result.perPressure = (RAIL_VOLUME * found.perPressure) / SUPPLY_DENSITY;
  };
}

/** C A √(2 Δp/ρ), ρ on the high side. */
export const openInlet: Law = orificeLaw(INLET, SUPPLY_DENSITY);

const shutInlet: Law = (_inlet, _outlet, result) => {
  result.flow = result.perInlet = result.perOutlet = 0;
};

/** Flow of a shot at rail density, so long after its beginning. */
export function shotFlow(since: Second): number {
  const [, full, ebb, end] = SHOT.corners;
  if (since >= end) return 0;
  return SHOT.flow * Math.min(1, since / full, (end - since) / (end - ebb));
}

/** What the inlet and the injector do. */
export interface Schedule {
  /** How long the inlet opens each time; 0 leaves it shut. */
  opening: Second;
  /** Number of shots. */
  shots: number;
  until: Second;
}

/** The rail under a schedule. The injector takes volume at the rail's own density. */
export function railOverTime({ opening, shots }: Schedule): (time: Second) => Network {
  let shot = 0;
  const found: Density = { density: 0, perPressure: 0 };
  const injector: Law = (inlet, _outlet, result) => {
    findDensity(inlet, found);
    result.flow = (shot * found.density) / SUPPLY_DENSITY;
    result.perInlet = (shot * found.perPressure) / SUPPLY_DENSITY;
    result.perOutlet = 0;
  };
  const [open, shut] = [openInlet, shutInlet].map((law) => railNetwork(law, injector)) as [Network, Network];
  return (time) => {
    shot = time < shots * SHOT_PERIOD ? shotFlow(time % SHOT_PERIOD) : 0;
    return time % (opening + REST) < opening ? open : shut;
  };
}

function railNetwork(inlet: Law, injector: Law): Network {
  return {
    nodes: ['supply', 'rail', 'cylinder'],
    fixed: [SUPPLY, undefined, 1e5],
    branches: [
      { id: 'inlet', from: 0, to: 1, law: inlet },
      { id: 'injector', from: 1, to: 2, law: injector },
    ],
  };
}

/** Where the schedule has corners. */
export function cornersOf({ opening, shots, until }: Schedule): Second[] {
  const openings = opening > 0 ? Math.ceil(until / (opening + REST)) : 0;
  return [
    ...Array.from({ length: openings }, (_, index) => index * (opening + REST)).flatMap((at) => [at, at + opening]),
    ...Array.from({ length: shots }, (_, index) => SHOT.corners.map((corner) => index * SHOT_PERIOD + corner)).flat(),
  ];
}
