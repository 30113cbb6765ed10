import { canHappen } from '@/lib/faults/apply-cause';
import type { Cause } from '@/lib/faults/cause';
import type { Job, Policy } from './job';
import { Notebook } from './notebook';

/** Measures nothing and calls what is most common on such a vehicle. */
export const partsChanger: Policy = {
  id: 'parts-changer',
  work(job) {
    const { id, repairs, provenBy } = mostCommon(job);
    const [repair, proof] = [repairs[0], provenBy[0]];
    if (!repair || !proof) throw new RangeError(`Cause ${id} has no repair or no proof`);
    return new Notebook(job).call({ kind: 'call', cause: id, repair: repair.id, proof, restored: [] });
  },
};

function mostCommon({ theCase: { rig, setting }, catalogue }: Job): Cause {
  const possible = [...catalogue.causes.values()].filter((cause) => canHappen(rig, cause, setting));
  return possible.reduce((most, cause) => (cause.weight > most.weight ? cause : most));
}
