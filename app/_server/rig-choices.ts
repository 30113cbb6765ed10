import { conditionsOf } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import type { Check } from '@/lib/checks/check';
import { type ConditionId, conditionIds } from '@/lib/rig/condition';
import type { LimitLine, Rig } from '@/lib/rig/rig';
import { type CheckGroup, checkGroup } from './check-groups';
import { type LimitFacts, limitFacts } from './limit-facts';

export interface Choice {
  id: string;
  name: string;
}

export interface CheckChoice extends Choice {
  group: CheckGroup;
  how: string;
  ports: readonly string[];
  minutes: number;
  cautions: readonly string[];
  /** What goes wrong with it in practice, each in a sentence. */
  mistakes: readonly string[];
  /** All in which it can be done, the unwise ones among them unmarked. */
  conditions: readonly ConditionId[];
  /** Those that its procedure calls for. */
  proofConditions: readonly ConditionId[];
  instruments: readonly Choice[];
}

export interface LimitChoice {
  line: LimitLine;
  /** Named where the check reads more than one quantity. */
  quantity: string | undefined;
  facts: LimitFacts;
}

/** Everything a learner can choose from. The same for every case of a rig, whatever is hidden in it. */
export interface RigChoices {
  checks: readonly CheckChoice[];
  limits: readonly { check: string; lines: readonly LimitChoice[] }[];
  causes: readonly Choice[];
  repairs: readonly Choice[];
  /** What may have to be put right, and what must not be done. */
  restoring: readonly Choice[];
}

export function rigChoices(rig: Rig, catalogue: Catalogue): RigChoices {
  const checks = [...catalogue.checks.values()].filter((check) => check.ports[rig.id]);
  const causes = [...catalogue.causes.values()];
  const repairs = new Map(causes.flatMap((cause) => cause.repairs.map(({ id, text }) => [id, text.en] as const)));
  return {
    checks: byPort(
      checks.map((check) => checkChoice(check, rig, catalogue)),
      rig,
    ),
    limits: checks
      .map((check) => ({ check: check.text.en.name, lines: limitChoices(rig, check, catalogue) }))
      .filter(({ lines }) => lines.length > 0)
      .sort((a, b) => collate(a.check, b.check)),
    causes: byName(causes.map(({ id, text }) => ({ id, name: text.en.name }))),
    repairs: byName([...repairs].map(([id, name]) => ({ id, name }))),
    restoring: byName([...catalogue.restoring.values()].map(({ id, text }) => ({ id, name: text.en.name }))),
  };
}

function checkChoice(check: Check, rig: Rig, { gauges }: Catalogue): CheckChoice {
  const all = conditionsOf(check);
  const instruments = check.instruments.flatMap((id) => gauges.get(id) ?? []);
  const ports = check.ports[rig.id] ?? [];
  return {
    id: check.id,
    name: check.text.en.name,
    how: check.text.en.how,
    group: checkGroup(ports),
    ports,
    minutes: check.minutes,
    cautions: check.cautions,
    mistakes: check.mistakes.map(({ text }) => text.en),
    conditions: conditionIds.filter((id) => all.includes(id)),
    proofConditions: conditionIds.filter((id) => check.conditions.includes(id)),
    instruments: byName(instruments.map(({ id, text }) => ({ id, name: `${text.en.name}, ${text.en.accuracy}` }))),
  };
}

function limitChoices(rig: Rig, { id, quantities, text }: Check, catalogue: Catalogue): LimitChoice[] {
  return rig.limits
    .filter((line) => line.check === id)
    .map((line) => ({
      line,
      quantity: quantities.length > 1 ? text.en.quantities[line.quantity] : undefined,
      facts: limitFacts(catalogue, line),
    }));
}

/** Along the fuel's way: in the order of the rig's ports. */
function byPort(checks: CheckChoice[], { ports }: Rig): CheckChoice[] {
  const order = (check: CheckChoice) => ports.findIndex(({ id }) => id === check.ports[0]);
  return checks.sort((a, b) => order(a) - order(b) || collate(a.name, b.name));
}

function byName(choices: Choice[]): Choice[] {
  return choices.sort((a, b) => collate(a.name, b.name));
}

function collate(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
