import type { OptionCount } from './choices';
import type { ItemStatistics } from './item-statistics';
import { FEW_PEOPLE } from './statistic';

/** Why an item deserves a second look. `beyondChance`: so few people could hardly show it by accident (95 %). */
export type ItemFlag =
  | { code: 'too-few'; people: number; wanted: number }
  | { code: 'too-easy' | 'too-hard'; difficulty: number; limit: number }
  | { code: 'negative-discrimination'; discrimination: number; beyondChance: boolean }
  | { code: 'low-discrimination'; discrimination: number; limit: number; beyondChance: boolean }
  | { code: 'everybody-alike' }
  | { code: 'wrong-more-popular-than-right'; option: string; count: number; right: number }
  | { code: 'wrong-chosen-by-the-able'; option: string; count: number; elsewhere: number; rightElsewhere: number };

/** Common practice, no source, but for the correlation of 0.2: Ebel 1965, Measuring Educational Achievement (from memory). */
const TOO_EASY = 0.95;
const TOO_HARD = 0.2;
const LOW_DISCRIMINATION = 0.2;
/** Fewer choosers of an option say nothing about who chooses it. Assumed. */
const FEW_CHOOSERS = 5;

/**
 * What to look at again in one item. A flag says so at any number of people; with few of them `too-few` stands first.
 *
 * @param options  Of the item, from `choiceCounts`; none where nothing is chosen.
 */
export function itemFlags(item: ItemStatistics, options: readonly OptionCount[] = []): ItemFlag[] {
  return [...numbersOf(item), ...difficultyFlags(item), ...discriminationFlags(item), ...choiceFlags(options)];
}

function numbersOf({ people }: ItemStatistics): ItemFlag[] {
  return people < FEW_PEOPLE ? [{ code: 'too-few', people, wanted: FEW_PEOPLE }] : [];
}

function difficultyFlags({ difficulty: { value } }: ItemStatistics): ItemFlag[] {
  if (value === undefined) return [];
  if (value > TOO_EASY) return [{ code: 'too-easy', difficulty: value, limit: TOO_EASY }];
  if (value < TOO_HARD) return [{ code: 'too-hard', difficulty: value, limit: TOO_HARD }];
  return [];
}

function discriminationFlags({ discrimination: { value, why }, pairs }: ItemStatistics): ItemFlag[] {
  if (why === 'item-without-spread') return [{ code: 'everybody-alike' }];
  if (value === undefined || value >= LOW_DISCRIMINATION) return [];
  if (value < 0)
    return [{ code: 'negative-discrimination', discrimination: value, beyondChance: highEnd(value, pairs) < 0 }];
  const beyondChance = highEnd(value, pairs) < LOW_DISCRIMINATION;
  return [{ code: 'low-discrimination', discrimination: value, limit: LOW_DISCRIMINATION, beyondChance }];
}

/** One-sided 95 % upper end of a correlation, by Fisher's transformation (Fisher 1921). */
function highEnd(correlation: number, pairs: number): number {
  if (pairs <= 3) return 1;
  return Math.tanh(Math.atanh(correlation) + 1.645 / Math.sqrt(pairs - 3));
}

function choiceFlags(options: readonly OptionCount[]): ItemFlag[] {
  const right = options.find((option) => option.right);
  if (!right) return [];
  const wrong = options.filter((option) => !option.right);
  const popular = wrong.filter(({ count }) => count > right.count).slice(0, 1);
  return [
    ...popular.map(({ option, count }) => ({
      code: 'wrong-more-popular-than-right' as const,
      option,
      count,
      right: right.count,
    })),
    ...wrong.flatMap((option) => ableFlags(option, right)),
  ];
}

function ableFlags({ option, count, elsewhere }: OptionCount, right: OptionCount): ItemFlag[] {
  if (count < FEW_CHOOSERS || right.count < FEW_CHOOSERS) return [];
  if (elsewhere === undefined || right.elsewhere === undefined || elsewhere <= right.elsewhere) return [];
  return [{ code: 'wrong-chosen-by-the-able', option, count, elsewhere, rightElsewhere: right.elsewhere }];
}
