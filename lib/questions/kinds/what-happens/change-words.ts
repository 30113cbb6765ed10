import type { Line, Value } from '../../line';
import type { Fault } from '../../shared/broken-day';
import { lookWords, shownBy } from '../../shared/day-words';
import { degreeOf } from '../../shared/degree-of';
import { type Change, type Look, NONE, PLAIN, PLAIN_SHARE } from './changes';

/** A fault and how far it has gone, as what fills a line. */
export function faultValues(fault: Fault): Record<string, Value> {
  return { cause: { name: 'cause', id: fault.cause.id }, degree: degreeOf(fault) };
}

/** What a reading is without the fault and with it, and what that is called. */
export function changeWords(look: Look, { gauge, before, after, plain, none, direction }: Change): Line {
  const inUnit = (value: number) => ({ quantity: value, unit: gauge.unit });
  return {
    say: 'change',
    with: {
      look: { line: lookWords(look) },
      gauge: { name: 'gauge', id: gauge.id },
      before: shownBy(gauge, before),
      after: shownBy(gauge, after),
      direction: direction ?? 'stays',
      difference: inUnit(Math.abs(after - before)),
      plain: inUnit(plain),
      none: inUnit(none),
    },
  };
}

/** When a change counts. */
export function ruleWords(): Line {
  return { say: 'rule', with: { plain: PLAIN, share: 100 * PLAIN_SHARE, none: NONE } };
}
