import { type Responses, totalsOf } from './responses';

/** What was chosen or named, a column each. Somebody may have chosen several options of one item. */
export interface Choices {
  /** Names of all options or causes, over all items. */
  options: readonly string[];
  /** Row of the responses. */
  person: Int32Array;
  /** Column of the responses. */
  item: Int32Array;
  /** Which of `options`. */
  option: Int32Array;
  /** Names that are right, for each item. */
  right: readonly ReadonlySet<string>[];
}

/** How often one option of an item was chosen, and by whom. */
export interface OptionCount {
  option: string;
  right: boolean;
  count: number;
  /** Mean share, 0…1, that those who chose it earned on the other items; undefined where they answered no other. */
  elsewhere: number | undefined;
}

/** For each item the options that anybody chose and those that are right, the commonest first, then by name. */
export function choiceCounts(responses: Responses, choices: Choices): OptionCount[][] {
  const tallies = choices.right.map((right) => new Map([...right].map((name) => [name, emptyTally()])));
  const { earned, possible } = totalsOf(responses);
  for (const [at, person] of choices.person.entries()) {
    const item = choices.item[at] as number;
    const tally = tallyOf(tallies[item], choices.options[choices.option[at] as number]);
    tally.count++;
    const score = responses.scores[person * responses.items + item] as number;
    const answered = !Number.isNaN(score);
    const others = (possible[person] as number) - (answered ? (responses.maxima[item] as number) : 0);
    if (!(others > 0)) continue;
    tally.met++;
    tally.shares += ((earned[person] as number) - (answered ? score : 0)) / others;
  }
  return tallies.map((tally, item) => [...tally].map(countOf(choices.right[item])).sort(byCountThenName));
}

interface Tally {
  count: number;
  /** Choosers with an answer to another item, and the shares that they earned there. */
  met: number;
  shares: number;
}

const emptyTally = (): Tally => ({ count: 0, met: 0, shares: 0 });

function tallyOf(tallies: Map<string, Tally> | undefined, option: string | undefined): Tally {
  if (!tallies || option === undefined) throw new RangeError('A choice names an item or an option that is not there');
  const tally = tallies.get(option) ?? emptyTally();
  tallies.set(option, tally);
  return tally;
}

function countOf(right: ReadonlySet<string> | undefined): (entry: [string, Tally]) => OptionCount {
  return ([option, { count, met, shares }]) => ({
    option,
    right: right?.has(option) ?? false,
    count,
    elsewhere: met > 0 ? shares / met : undefined,
  });
}

function byCountThenName(a: OptionCount, b: OptionCount): number {
  return b.count - a.count || (a.option < b.option ? -1 : 1);
}
