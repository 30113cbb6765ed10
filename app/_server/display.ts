import { cookies } from 'next/headers';
import { type Theme, themes, type UnitChoice, unitChoices } from '@/app/_ui/display-choices';

export interface Display {
  units: UnitChoice;
  theme: Theme;
}

/** How this reader wants to see things. A cookie that says something else counts as none. */
export async function readDisplay(): Promise<Display> {
  const jar = await cookies();
  return {
    units: oneOf(unitChoices, jar.get('units')?.value) ?? 'kpa-c',
    theme: oneOf(themes, jar.get('theme')?.value) ?? 'system',
  };
}

function oneOf<T extends string>(choices: readonly T[], value: string | undefined): T | undefined {
  return choices.find((choice) => choice === value);
}
