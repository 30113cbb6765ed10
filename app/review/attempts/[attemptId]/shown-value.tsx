import type { ReadingItem } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { ItemValue } from '@/app/_ui/item-value';
import { readingText } from '@/app/_ui/reading-text';
import { showNumber, withUnit } from '@/app/_ui/show-quantity';

/** What an instrument showed, a scale too: whoever reviews need not read it. */
export function ShownValue({ item, units }: { item: ReadingItem; units: UnitChoice }) {
  const { shown } = item;
  if (shown.kind !== 'value') return <ItemValue item={{ ...item, finding: undefined }} units={units} />;
  return readingText(item, units) ?? withUnit(showNumber(shown.value), shown.unit);
}
