import { type Characteristic, characteristicsOf, type Procedure } from '../competency/characteristics';
import { DESIGN_SPREAD, stepsAround } from '../competency/response';
import { information, type TaskModel } from '../competency/task-model';
import type { RequiredTopic, RoleProfile } from './profile';

/** A rule that one topic is decided by. */
export type TopicRule = Pick<RequiredTopic, 'cut' | 'confidence'> & Pick<RoleProfile, 'refuse' | 'minimum' | 'maximum'>;

/** How far from the line the simulated people stand, logits; the second is "just below". */
export const ODDS_AT = [-0.5, -0.25, 0, 0.5, 1] as const;

/** What comes of people who stand so far from a line. */
export interface Odds extends Characteristic {
  fromLine: number;
}

/** Simulated people at each place: a share errs by no more than 3 in a hundred (one standard error). */
const PEOPLE = 300;
/** The next task is one of so many that tell most at the line. */
const DRAWN_OF = 5;

/**
 * How often a topic is decided how under a rule, for people whose true ability lies so far from its line: cases and choice questions of
 * every difficulty in turn, as many as a new-hire check asks at most. Their difficulty is known as well as a design is.
 */
export function oddsAt(rule: TopicRule, fromLine: number): Odds {
  const { cut, minimum, maximum, confidence, refuse } = rule;
  const procedure: Procedure = {
    bank: [...BANK].sort((one, other) => information(other, cut) - information(one, cut)),
    cut,
    rule: { confidence, refuse, minimum },
    maximum,
    next: (left, _, random) => left[Math.floor(random.next() * Math.min(DRAWN_OF, left.length))],
  };
  const seed = `odds ${JSON.stringify([cut, confidence, refuse, minimum, maximum])}`;
  const [found] = characteristicsOf(procedure, [cut + fromLine], { people: PEOPLE, seed }) as [Characteristic];
  return { ...found, fromLine };
}

/** The rules that the topics of a profile are decided by, each once. */
export function rulesOf({ topics, refuse, minimum, maximum }: RoleProfile): { rule: TopicRule; topics: string[] }[] {
  const rules = new Map<string, { rule: TopicRule; topics: string[] }>();
  for (const { topic, cut, confidence } of topics) {
    const known = rules.get(`${cut} ${confidence}`);
    if (known) known.topics.push(topic);
    else rules.set(`${cut} ${confidence}`, { rule: { cut, confidence, refuse, minimum, maximum }, topics: [topic] });
  }
  return [...rules.values()];
}

/** Half cases of five scores, half questions with four choices, from easy to hard. */
const BANK: readonly TaskModel[] = Array.from({ length: 40 }, (_, index): TaskModel => {
  const difficulty = -2 + index / 10;
  return index % 2 === 0
    ? stepsAround({ logits: difficulty, spread: DESIGN_SPREAD }, 4)
    : { kind: 'choice', difficulty, floor: 0.25, spread: DESIGN_SPREAD };
});
