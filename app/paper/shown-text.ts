import type { UnitChoice } from '@/app/_ui/display-choices';
import { printedValue } from '@/app/_ui/printed-value';
import { showNumber, withUnit } from '@/app/_ui/show-quantity';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { SheetRow } from '@/lib/paper/sheet';

/** What an instrument shows, as it is written down: to its own resolution, a word for what an eye sees, codes as they are. */
export function shownText({ shown, instrument, quantity, check }: SheetRow, units: UnitChoice): string {
  const gauge = gaugeFor(instrument, quantity);
  switch (shown.kind) {
    case 'value': {
      const grade = gauge.display === 'eye' ? check.text.en.grades?.[quantity.id]?.[shown.value] : undefined;
      if (grade) return grade;
      const { digits, unit } = printedValue(shown.value, shown.unit, gauge.resolution, units);
      return withUnit(digits, unit);
    }
    case 'off-scale':
      return `${shown.end === 'high' ? '>' : '<'} ${withUnit(showNumber(shown.limit), shown.unit)}`;
    case 'codes':
      return shown.codes.map(({ spn, fmi }) => `SPN ${spn} FMI ${fmi}`).join(', ') || '–';
    case 'destroyed':
    case 'jet':
      return '–';
  }
}
