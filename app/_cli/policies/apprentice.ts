import { comparisons, verdictOf } from '@/lib/checks/verdict';
import type { Belief } from '@/lib/diagnosis/belief';
import type { RouteStep } from '@/lib/diagnosis/next-check';
import type { Particles } from '@/lib/diagnosis/particles';
import { byRepair, repairDecision } from '@/lib/diagnosis/shares';
import type { CallAct, FindingAct } from '@/lib/grading/acts';
import { type RandomStream, randomStream } from '@/lib/random';
import type { Job, Policy } from './job';
import { Looking } from './looking';
import type { MakeUp } from './make-up';
import { type Change, Notebook } from './notebook';
import { soundCall } from './sound-call';
import { anotherLine, areasTurnedRound } from './wrong-reasons';

/** As many as the longest of the expert's routes has. */
const MOST_READINGS = 13;

/** Somebody of a certain make-up; one who can do everything works like the expert. The same word errs in the same places. */
export function apprentice(makeUp: MakeUp, word: string): Policy {
  return {
    id: 'apprentice',
    work(job) {
      const draw = randomStream(`${word} ${job.theCase.code}`, 'apprentice');
      const notebook = new Notebook(job);
      const looking = new Looking(job, notebook);
      while (looking.count < MOST_READINGS) {
        const step = nextLook(job, looking, succeeds(draw, makeUp.checks), draw);
        if (!step) break;
        looking.make(step, errors(job, makeUp, draw));
      }
      const right = succeeds(draw, makeUp.call);
      const belief = right ? looking.belief : withoutTheLeading(job.particles, looking.belief);
      return notebook.call(carelessly(soundCall(job, notebook, belief), makeUp.care, draw));
    },
  };
}

function succeeds(draw: RandomStream, chance: number): boolean {
  return draw.next() < chance;
}

/**
 * The expert's next step while that route is kept to, or what else tells something. Once nothing more is to be told, the part
 * itself is measured by who does what is best, and by who has measured nothing yet.
 */
function nextLook(job: Job, looking: Looking, best: boolean, draw: RandomStream): RouteStep | undefined {
  const { steps } = job.certificate.route;
  if (best && steps.slice(0, looking.count).every((step) => looking.has(step))) return steps[looking.count];
  const [first, ...others] = looking.settled() ? [] : looking.worthwhile();
  if (!first) return best || looking.count === 0 ? steps.slice(-1).find((proof) => !looking.has(proof)) : undefined;
  return best || others.length === 0 ? first : draw.pick(others, ({ perMinute }) => perMinute);
}

function errors(job: Job, { verdicts, reasons }: MakeUp, draw: RandomStream): Change {
  return (right) => {
    const judged = succeeds(draw, verdicts) ? right : misjudged(right, draw);
    if (succeeds(draw, reasons)) return judged;
    const wrong = draw.pick([anotherLine(job, right), areasTurnedRound(right), NO_AREAS]);
    return { ...judged, ...wrong };
  };
}

const NO_AREAS = { clears: [], suspects: [] };

/** The dial read wrong, and another verdict with it. */
function misjudged(right: FindingAct, draw: RandomStream): FindingAct {
  const comparison = draw.pick(comparisons.filter((other) => verdictOf(other) !== right.verdict));
  const entered = right.entered && { ...right.entered, value: roughly(right.entered.value * draw.between(0.7, 1.3)) };
  return { ...right, entered, comparison, verdict: verdictOf(comparison) };
}

function roughly(value: number): number {
  return Number(value.toPrecision(2));
}

/** What would be believed if what is believed most had not come to mind. */
function withoutTheLeading(particles: Particles, belief: Belief): Belief {
  const [leading] = [...byRepair(particles, belief)].sort(([, a], [, b]) => b - a)[0] ?? [];
  return belief.map((weight, index) => (repairDecision(particles.causes[index] ?? []) === leading ? 0 : weight));
}

function carelessly(call: CallAct, care: number, draw: RandomStream): CallAct {
  return { ...call, restored: call.restored?.filter(() => succeeds(draw, care)) ?? [] };
}
