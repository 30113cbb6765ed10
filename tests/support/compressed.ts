import { STANDARD_PRESSURE } from '@/lib/fluids/atmosphere';
import { liquidStore } from '@/lib/hydraulics/store';

/** How many times as dense fuel is under pressure as it is at ambient, as the rail's store counts it. */
export function compressed(modulusAtAmbient: number, gaugePressure: number): number {
  const stored = { volume: 0, perPressure: 0 };
  const store = liquidStore({ volume: 1, modulus: modulusAtAmbient, ambient: STANDARD_PRESSURE });
  store(STANDARD_PRESSURE + gaugePressure, stored);
  return 1 + stored.volume;
}
