import { gaugeFor } from '@/lib/cases/perform-check';
import { measured } from '@/lib/checks/expected';
import { beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { Ground } from '@/lib/diagnosis/ground';
import { Particles } from '@/lib/diagnosis/particles';
import { byArea } from '@/lib/diagnosis/shares';
import type { Line, Value } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { dayOf } from '@/lib/questions/shared/rig-day';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import type { ComplaintId, TroubleCode } from '@/lib/symptoms/work-order';
import { ZERO_CELSIUS } from '@/lib/units';
import { catalogue } from './bench-rig';

/** Belief from nothing but what a question shows: its day, its work order and its readings, with particles of their own. */
export function believedFrom({ rig: rigId, stem, figure }: GeneratedQuestion) {
  const rig = catalogue.rigs.get(rigId);
  if (!rig) throw new Error(`No rig ${rigId}`);
  const { setting, points } = dayFrom(rig, stem);
  const known = { rig, setting, points, workOrder: workOrderFrom(stem), spec: {} };
  const particles = new Particles(known, catalogue, groundOf(rig, setting));
  let belief = beliefAtStart(particles);
  for (const { check, condition, instrument, shown } of figure?.figure === 'readings' ? figure.readings : []) {
    const quantity = catalogue.checks.get(check)?.quantities.find(({ id }) => id === shown.quantity);
    const gauge = catalogue.gauges.get(instrument);
    const seen = quantity && gauge && measured(shown, gaugeFor(gauge, quantity));
    if (!quantity || !seen) throw new Error(`Nothing measured by ${check}`);
    belief = updateBelief(belief, particles, { check, condition, quantity, seen });
  }
  return { particles, belief, areas: byArea(particles, belief) };
}

const grounds = new Map<string, Ground>();

/** Solved for the tests alone, in an order of their own; once for each day. */
function groundOf(rig: Rig, setting: Setting): Ground {
  const day = JSON.stringify([rig.id, setting]);
  const ground = grounds.get(day) ?? new Ground(rig, setting, catalogue);
  grounds.set(day, ground);
  return ground;
}

function dayFrom(rig: Parameters<typeof dayOf>[1], stem: readonly Line[]) {
  const [day] = stem;
  const given = day && 'say' in day ? day.with : undefined;
  const [air, altitude] = [numberIn(given?.air), numberIn(given?.altitude)];
  for (let number = 0; number < 8; number++) {
    const found = dayOf(number, rig, catalogue);
    const { airTemperature, altitude: height } = found.setting;
    if (Math.round(airTemperature - ZERO_CELSIUS) === air && height === altitude) return found;
  }
  throw new Error('No such day');
}

function numberIn(value: Value | undefined): number {
  if (typeof value !== 'object') return Number(value);
  return 'quantity' in value ? value.quantity : 'number' in value ? value.number : Number.NaN;
}

function workOrderFrom(stem: readonly Line[]): { complaint: ComplaintId; codes: TroubleCode[] } {
  const said = stem.flatMap((line) => ('say' in line ? [line] : []));
  const complaint = said.find(({ say }) => say.startsWith('order-'))?.say.slice('order-'.length) as ComplaintId;
  const codes = said.find(({ say }) => say === 'codes')?.with?.codes;
  const list = typeof codes === 'object' && 'list' in codes ? codes.list : [];
  return {
    complaint,
    codes: list.map((item) => {
      const line = typeof item === 'object' && 'line' in item && 'say' in item.line ? item.line : undefined;
      return { spn: Number(line?.with?.spn), fmi: Number(line?.with?.fmi) };
    }),
  };
}
