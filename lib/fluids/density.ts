import { type Kelvin, type KilogramPerCubicMetre, ZERO_CELSIUS } from '../units';

const BASE_TEMPERATURE: Kelvin = ZERO_CELSIUS + 15;
/** Where correlations made for customary units ask for a fuel's density. */
export const SIXTY_FAHRENHEIT: Kelvin = ZERO_CELSIUS + 140 / 9;

/** A commodity group of Table 54B: thermal expansion at 15 °C is k0/ρ15² + k1/ρ15 + k2, per °C. */
interface CommodityGroup {
  from: KilogramPerCubicMetre;
  to: KilogramPerCubicMetre;
  k0: number;
  k1: number;
  k2: number;
}

/**
 * Lightest first. The table leaves gaps between groups.
 *
 * @source ASTM D1250 / API MPMS 11.1 (1980), Table 54B, generalised products.
 */
const groups: readonly CommodityGroup[] = [
  { from: 770.5, to: 787.5, k0: 2680.3206, k1: 0, k2: -0.00336312 },
  { from: 788, to: 838.5, k0: 594.5418, k1: 0, k2: 0 },
  { from: 839, to: 1075, k0: 186.9696, k1: 0.48618, k2: 0 },
];

/**
 * Density of a middle distillate at ambient pressure.
 *
 * ρ = ρ15·exp(−α·Δt·(1 + 0.8·α·Δt)), Δt = t − 15 °C, α by commodity group. In the gap between two groups α passes
 * linearly from one to the other, so that density is continuous in ρ15; diesel straddles the gap at 838.5–839.
 * Range: ρ15 770.5–1075 kg/m³, −18…150 °C; the formula itself is smooth beyond those temperatures.
 *
 * @source ASTM D1250 / API MPMS 11.1 (1980), metric, Table 54B. The blending in the gaps is ours.
 */
export function densityAt(density15: KilogramPerCubicMetre, temperature: Kelvin): KilogramPerCubicMetre {
  const expansion = thermalExpansion(density15) * (temperature - BASE_TEMPERATURE);
  return density15 * Math.exp(-expansion * (1 + 0.8 * expansion));
}

/**
 * Thermal expansion −(1/ρ)·dρ/dT of a middle distillate at ambient pressure, 1/K.
 *
 * α·(1 + 1.6·α·Δt), the derivative of the form of `densityAt`; ranges as there.
 *
 * @source ASTM D1250 / API MPMS 11.1 (1980), metric, Table 54B, differentiated.
 */
export function expansionAt(density15: KilogramPerCubicMetre, temperature: Kelvin): number {
  const alpha = thermalExpansion(density15);
  return alpha * (1 + 1.6 * alpha * (temperature - BASE_TEMPERATURE));
}

/** Thermal expansion coefficient at 15 °C, 1/K. */
function thermalExpansion(density15: KilogramPerCubicMetre): number {
  let lighter: CommodityGroup | undefined;
  for (const group of groups) {
    if (density15 > group.to) {
      lighter = group;
      continue;
    }
    if (density15 >= group.from) return expansionIn(group, density15);
    if (!lighter) break;
    const share = (density15 - lighter.to) / (group.from - lighter.to);
    return (1 - share) * expansionIn(lighter, density15) + share * expansionIn(group, density15);
  }
  throw new RangeError(`Density at 15 °C is ${density15} kg/m³: Table 54B covers distillates from 770.5 to 1075 kg/m³`);
}

function expansionIn({ k0, k1, k2 }: CommodityGroup, density15: KilogramPerCubicMetre): number {
  return (k0 / density15 + k1) / density15 + k2;
}
