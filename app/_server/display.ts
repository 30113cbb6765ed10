import { cookies } from 'next/headers';
import { type Theme, themes, type UnitChoice, unitChoices } from '@/app/_ui/display-choices';
import { settingsFor } from './organization-settings';
import { readSession } from './session';

export interface Display {
  units: UnitChoice;
  theme: Theme;
}

/** How this reader wants to see things. Whoever has not chosen units sees their organisation's. */
export async function readDisplay(): Promise<Display> {
  const jar = await cookies();
  return {
    units: oneOf(unitChoices, jar.get('units')?.value) ?? (await settingsFor(await readSession())).units,
    theme: oneOf(themes, jar.get('theme')?.value) ?? 'system',
  };
}

function oneOf<T extends string>(choices: readonly T[], value: string | undefined): T | undefined {
  return choices.find((choice) => choice === value);
}
