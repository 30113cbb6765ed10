/** Regions of a fuel system in which suspicion is expressed, in the order the fuel meets them. */
export const areas = [
  'supply-side',
  'priming',
  'low-pressure-supply',
  'filtration',
  'metering-control',
  'high-pressure',
  'returns',
  'electrical-sensing',
  'fuel',
] as const;

export type Area = (typeof areas)[number];
