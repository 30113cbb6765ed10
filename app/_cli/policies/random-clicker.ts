import { isReadByEye } from '@/app/_server/decide-finding';
import { areas } from '@/lib/areas';
import { checkHookUp, conditionsOf, gaugeFor } from '@/lib/cases/perform-check';
import { comparisons, verdicts } from '@/lib/checks/verdict';
import { type Answer, type FindingAct, instrumentsDestroyed, type ReadingAct } from '@/lib/grading/acts';
import { type RandomStream, randomStream } from '@/lib/random';
import type { Job, Policy } from './job';
import { Notebook, type Numbered } from './notebook';

/** Readings made before the call: between these. */
const READINGS = [2, 9] as const;

/** Hooks up whatever can be hooked up, writes down anything, calls anything. */
export const randomClicker: Policy = {
  id: 'random-clicker',
  work(job) {
    const draw = randomStream(job.theCase.code, 'random clicker');
    const notebook = new Notebook(job);
    const readings = Math.floor(draw.between(...READINGS));
    for (let n = 0; n < readings; n++) {
      const hookUp = anyHookUp(job, draw, instrumentsDestroyed(notebook.acts));
      const reading = notebook.read(hookUp);
      const finding = anyFinding(job, draw, reading);
      if (finding) notebook.find(finding);
    }
    const restored = [...job.catalogue.restoring.keys()].filter(() => draw.next() < 0.5);
    return notebook.call({ kind: 'call', ...anyAnswer(job, draw), restored });
  },
};

function anyHookUp({ theCase, catalogue }: Job, draw: RandomStream, destroyed: ReadonlySet<string>) {
  const possible = [...catalogue.checks.values()].flatMap((check) =>
    conditionsOf(check).flatMap((condition) =>
      check.instruments.map((instrument) => ({ check: check.id, condition, instrument })),
    ),
  );
  return draw.pick(
    possible.filter(
      (hookUp) => !destroyed.has(hookUp.instrument) && !('error' in checkHookUp(theCase, catalogue, hookUp)),
    ),
  );
}

function anyFinding(
  { theCase, catalogue }: Job,
  draw: RandomStream,
  reading: Numbered<ReadingAct>,
): FindingAct | undefined {
  const shown = draw.pick(reading.shown);
  if (shown.kind === 'destroyed' || shown.kind === 'jet') return undefined;
  const quantity = catalogue.checks.get(reading.check)?.quantities.find(({ id }) => id === shown.quantity);
  const instrument = catalogue.gauges.get(reading.instrument);
  if (!quantity || !instrument) throw new RangeError(`Nobody knows what ${reading.instrument} showed`);
  const gauge = gaugeFor(instrument, quantity);
  const value = draw.between(gauge.range.min, gauge.range.max);
  const named = areas.map((area) => ({ area, as: draw.pick(['clears', 'suspects', 'neither'] as const) }));
  const allOf = (as: 'clears' | 'suspects') => named.filter((one) => one.as === as).map(({ area }) => area);
  return {
    kind: 'finding',
    reading: reading.seq,
    quantity: quantity.id,
    entered: isReadByEye(gauge, shown) ? { value, unit: gauge.unit } : null,
    verdict: draw.pick(verdicts),
    comparison: draw.pick(comparisons),
    limit: draw.pick(theCase.rig.limits).id,
    clears: allOf('clears'),
    suspects: allOf('suspects'),
    words: '',
  };
}

function anyAnswer({ theCase, catalogue }: Job, draw: RandomStream): Answer {
  const causes = [...catalogue.causes.values()];
  const proofs = [...catalogue.checks.values()].flatMap(({ id, ports, conditions }) =>
    ports[theCase.rig.id] ? conditions.map((condition) => ({ check: id, condition })) : [],
  );
  return {
    cause: draw.pick(causes).id,
    repair: draw.pick(causes.flatMap(({ repairs }) => repairs)).id,
    proof: draw.pick(proofs),
  };
}
