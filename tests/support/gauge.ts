import type { Gauge } from '@/lib/gauges/gauge';

/** A dial 0–100 kPa of class 1.6 that survives 1.3 times its range; readable to 0.5 kPa. */
export function aGauge(changes: Partial<Gauge> = {}): Gauge {
  return {
    id: 'a-gauge',
    display: 'dial',
    measures: ['gauge-pressure'],
    unit: 'kPa',
    range: { min: 0, max: 100 },
    resolution: 0.5,
    accuracy: { kind: 'class', percentOfSpan: 1.6 },
    scale: { major: 10, minor: 1 },
    overRange: { kind: 'destroyed', ratio: 1.3 },
    source: { kind: 'assumed', because: 'A gauge for tests' },
    text: { en: { name: 'Dial gauge 0–100 kPa', accuracy: 'class 1.6' } },
    ...changes,
  };
}
