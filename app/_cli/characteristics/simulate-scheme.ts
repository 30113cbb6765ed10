import { type DecisionRule, decideTopic } from '@/lib/competency/decide';
import type { Decision } from '@/lib/competency/decision';
import { chanceAtOrAbove, intervalOf, meanOf } from '@/lib/competency/posterior';
import { emptyTally, posteriorAt } from '@/lib/competency/tally';
import { randomStream } from '@/lib/random';
import type { CharacteristicRow, SchemeCharacteristics } from '@/lib/readiness/characteristics-of-scheme';
import { nextStep } from '@/lib/readiness/sitting';
import { type SittingPool, sittingPool } from '@/lib/readiness/sitting-pool';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import { afterTask, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';
import type { RealTask } from './real-pool';
import { normal, Workshop } from './simulated-learner';

/** Sittings of simulated learners under the rules of a scheme, over a pool of real tasks. */
export class Examination {
  readonly workshop: Workshop;
  private readonly pool: SittingPool<RealTask>;

  constructor(
    tasks: readonly RealTask[],
    private readonly rules: SittingRules,
    private readonly seed: string,
  ) {
    this.pool = sittingPool(tasks, rules);
    this.workshop = new Workshop(rules.topics.map(({ topic }) => topic));
  }

  /** What comes of people whose ability is so far from the cut, on each topic. */
  row(above: number, people: number): CharacteristicRow {
    const sat = Array.from({ length: people }, (_, person) =>
      this.sit(({ cut }) => cut + above, `${this.seed} ${above} ${person}`),
    );
    const decided = sat.flatMap(({ topics }) => topics.map(({ decision }) => decision));
    const share = (decision: Decision) => decided.filter((one) => one === decision).length / decided.length;
    return {
      above,
      people,
      ready: rounded(share('ready')),
      notYet: rounded(share('not-yet')),
      undecided: rounded(share('not-enough-evidence')),
      allReady: rounded(mean(sat, ({ topics }) => Number(topics.every(({ decision }) => decision === 'ready')))),
      tasks: rounded(mean(sat, ({ state }) => state.given.length)),
      minutes: rounded(mean(sat, ({ state }) => state.elapsed / 60)),
    };
  }

  /** How near the measure comes to the truth, over people drawn as the scale has them; each sits twice. */
  population(people: number): SchemeCharacteristics['population'] {
    const draw = randomStream(this.seed, 'abilities');
    const pairs = Array.from({ length: people }, (_, person) => {
      const ability = normal(draw);
      const [first, second] = [1, 2].map((time) => this.sit(() => ability, `${this.seed} person ${person} ${time}`));
      return { ability, first: first?.topics ?? [], second: second?.topics ?? [] };
    });
    const each = pairs.flatMap(({ ability, first, second }) =>
      first.map((topic, place) => ({ ability, ...topic, again: second[place]?.decision })),
    );
    const made = each.filter(({ decision }) => decision !== 'not-enough-evidence');
    return {
      people,
      coverage: rounded(mean(each, ({ ability, low, high }) => Number(low <= ability && ability <= high))),
      correlation: rounded(correlationOf(each.map(({ ability, mean: found }) => [ability, found] as const))),
      accuracy: rounded(mean(made, ({ ability, cut, decision }) => Number(ability >= cut === (decision === 'ready')))),
      agreement: rounded(mean(each, ({ decision, again }) => Number(decision === again))),
    };
  }

  private sit(abilityOn: (topic: SittingRules['topics'][number]) => number, seed: string) {
    const ability = abilityOn(this.rules.topics[0] as SittingRules['topics'][number]);
    const draw = randomStream(seed, 'learner');
    let state = sittingOf();
    for (;;) {
      const step = nextStep(state, this.pool, this.rules, randomStream(seed, `step ${state.given.length + 1}`));
      if ('end' in step) return { state, topics: this.decisionsOf(state) };
      const told = this.workshop.show(step.task, ability, draw);
      state = afterTask(state, step.task, told, state.elapsed + step.task.seconds);
    }
  }

  private decisionsOf({ tallies }: SittingState) {
    return this.rules.topics.map(({ topic, cut, confidence, atLeast }) => {
      const tally = tallies.get(topic) ?? emptyTally;
      const posterior = posteriorAt(tally, tally.at, null);
      const rule: DecisionRule = { confidence, refuse: this.rules.refuse, minimum: atLeast };
      const decision = decideTopic({ chance: chanceAtOrAbove(posterior, cut), count: tally.count }, rule);
      return { cut, decision, mean: meanOf(posterior), ...intervalOf(posterior, 0.9) };
    });
  }
}

/** Share of the works of each level whose score was that level. */
export function asMeant({ meant }: Workshop): number[] {
  return meant.map((returned, level) => {
    const all = returned.reduce((sum, count) => sum + count, 0);
    return all === 0 ? 0 : rounded((returned[level] ?? 0) / all);
  });
}

function mean<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((sum, item) => sum + of(item), 0) / Math.max(1, items.length);
}

function correlationOf(pairs: readonly (readonly [number, number])[]): number {
  const [x, y] = [mean(pairs, ([one]) => one), mean(pairs, ([, other]) => other)];
  const product = mean(pairs, ([one, other]) => (one - x) * (other - y));
  const squares = (place: 0 | 1, at: number) => mean(pairs, (pair) => (pair[place] - at) ** 2);
  return product / Math.sqrt(squares(0, x) * squares(1, y));
}

/** To what a table shows, so that what is stored does not hang on the last bit. */
function rounded(value: number): number {
  return Number(value.toFixed(4));
}
