import type { Catalogue } from './catalogue';
import type { Check, Quantity } from './checks/check';
import { appliesTo } from './faults/apply-cause';
import type { Cause } from './faults/cause';
import { STANDARD_RUBRIC } from './grading/rubric';
import type { Rig } from './rig/rig';

/** Every id in content that points at nothing, as one line each: where it stands and what it names. */
export function checkReferences(catalogue: Catalogue): string[] {
  return [
    ...[...catalogue.rigs.values()].flatMap((rig) => rigReferences(rig, catalogue)),
    ...causeReferences(catalogue),
    ...checkReferencesOf(catalogue),
    ...missing([STANDARD_RUBRIC], catalogue.rubrics, 'content/rubrics: no rubric'),
    ...topicReferences(catalogue),
  ];
}

function rigReferences(rig: Rig, catalogue: Catalogue): string[] {
  const where = `content/rigs/${rig.id}.json`;
  const nodes = new Set(rig.nodes.map(({ id }) => id));
  const elements = new Set(rig.elements.map(({ id }) => id));
  const ends = rig.elements.flatMap((element) => ('from' in element ? [element.from, element.to] : [element.node]));
  return [
    ...missing(ends, nodes, `${where}: elements: no node`),
    ...missing(
      rig.ports.flatMap(({ node }) => node ?? []),
      nodes,
      `${where}: ports: no node`,
    ),
    ...missing(
      rig.ports.flatMap(({ element }) => element ?? []),
      elements,
      `${where}: ports: no element`,
    ),
    ...missing(
      rig.ageing.map(({ element }) => element),
      elements,
      `${where}: ageing: no element`,
    ),
    ...missing([rig.primingNode, rig.sightNode], nodes, `${where}: no node`),
    ...missing([rig.standing.heldBy], elements, `${where}: standing.heldBy: no element`),
    ...missing(rig.settings.fuels, catalogue.fuels, `${where}: settings.fuels: no fuel`),
    ...missing(
      rig.limits.map(({ check }) => check),
      catalogue.checks,
      `${where}: limits: no check`,
    ),
  ];
}

function causeReferences({ causes, rigs, checks }: Catalogue): string[] {
  return [...causes.values()].flatMap((cause) => {
    const where = `content/causes/${cause.id}.json`;
    const onNone = [...rigs.values()].some((rig) => appliesTo(rig, cause)) ? [] : [effectsText(cause)];
    const onNamed = Object.keys(cause.onRigs ?? {}).flatMap((id) => {
      const rig = rigs.get(id);
      if (!rig) return [`${where}: onRigs: no rig ${id}`];
      return appliesTo(rig, cause) ? [] : [`${where}: onRigs.${id}: no such parameter on that rig`];
    });
    return [
      ...onNone.map((effects) => `${where}: effects: no parameter ${effects} on any rig`),
      ...onNamed,
      ...missing(
        cause.provenBy.map(({ check }) => check),
        checks,
        `${where}: provenBy: no check`,
      ),
    ];
  });
}

function effectsText({ effects }: Cause): string {
  return effects.map(({ element, parameter }) => `${element}.${parameter}`).join(', ');
}

function checkReferencesOf({ checks, gauges, rigs, restoring }: Catalogue): string[] {
  return [...checks.values()].flatMap((check) => {
    const where = `content/checks/${check.id}.json`;
    const instruments = [...check.instruments, ...check.mistakes.flatMap(({ instrument }) => instrument ?? [])];
    return [
      ...Object.entries(check.ports).flatMap(([id, ports]) => onRig(check, rigs.get(id), id, ports, where)),
      ...missing(instruments, gauges, `${where}: instruments: no gauge`),
      ...missing(check.restore, restoring, `${where}: restore: no step`),
      ...check.quantities.flatMap((quantity) => quantityReferences(check, quantity, gauges, where)),
    ];
  });
}

/** What a check names that the rig it is offered on does not have. */
function onRig(check: Check, rig: Rig | undefined, id: string, ports: readonly string[], where: string): string[] {
  if (!rig) return [`${where}: ports: no rig ${id}`];
  const nodes = new Set(rig.nodes.map((node) => node.id));
  const elements = new Set(rig.elements.map((element) => element.id));
  const named = check.quantities.flatMap(({ of }) => ('node' in of ? [of.node] : 'from' in of ? [of.from, of.to] : []));
  return [
    ...missing(ports, new Set(rig.ports.map((port) => port.id)), `${where}: ports.${id}: no port`),
    ...missing([...named, ...(check.opens ? [check.opens] : [])], nodes, `${where}: ports.${id}: that rig has no node`),
    ...missing(
      check.quantities.flatMap(({ of }) => ('element' in of ? [of.element] : [])),
      elements,
      `${where}: ports.${id}: that rig has no element`,
    ),
  ];
}

function quantityReferences(check: Check, quantity: Quantity, gauges: Catalogue['gauges'], where: string): string[] {
  const at = `${where}: quantities.${quantity.id}`;
  const unfit = check.instruments.filter((id) => gauges.get(id)?.measures.includes(quantity.measures) === false);
  const words = check.text.en.grades?.[quantity.id]?.length ?? 0;
  const grades = quantity.grades ? 1 + Math.max(...quantity.grades.steps.map(({ grade }) => grade)) : 0;
  return [
    ...unfit.map((id) => `${at}: gauge ${id} does not measure ${quantity.measures}`),
    ...(quantity.id in check.text.en.quantities ? [] : [`${at}: no words in text.en.quantities`]),
    ...(words === grades ? [] : [`${at}: expected ${grades} words in text.en.grades, got ${words}`]),
  ];
}

function topicReferences({ topics, checks }: Catalogue): string[] {
  return [...topics.values()].flatMap((topic) =>
    missing(topic.checks, checks, `content/topics/${topic.id}.json: checks: no check`),
  );
}

function missing(ids: readonly string[], known: { has(id: string): boolean }, message: string): string[] {
  return ids.filter((id) => !known.has(id)).map((id) => `${message} ${id}`);
}
