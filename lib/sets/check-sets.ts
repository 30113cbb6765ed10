import type { Catalogue } from '../catalogue';
import { setFaults } from './item-faults';

/** What in ready sets and blueprints points at nothing or can never be drawn, as one line each. */
export function checkSets(catalogue: Catalogue): string[] {
  const { readySets, blueprints, topics } = catalogue;
  const ofSets = [...readySets.values()].flatMap(({ id, body }) => {
    const where = `content/sets/${id}.json`;
    const faults = [...setFaults(body, catalogue)].map(([item, { code }]) => `${where}: item ${item}: ${code}`);
    const organizations = body.items
      .filter(({ kind }) => kind === 'written')
      .map((item) => `${where}: item ${item.id}: no organisation`);
    const { blueprint } = body;
    const strange = blueprint === undefined || blueprints.has(blueprint) ? [] : [`${where}: no blueprint ${blueprint}`];
    return [...faults, ...organizations, ...strange];
  });
  const ofBlueprints = [...blueprints.values()].flatMap(({ id, topics: asked }) =>
    asked
      .filter(({ topic }) => !topics.has(topic))
      .map(({ topic }) => `content/blueprints/${id}.json: no topic ${topic}`),
  );
  return [...ofSets, ...ofBlueprints];
}
