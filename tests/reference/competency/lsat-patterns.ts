/**
 * The 32 patterns of right and wrong on section 6 of the Law School Admission Test: people of 1,000 who are expected to give
 * each, and the mean and spread of their ability (normal, mean 0, spread 1). Reference page 2.1: R package mirt 1.45.1, the
 * fits below; trapezoid rule on 241 points of −6…6 (run), to three decimals the same as ltm and mirt `fscores` (seen).
 */
export const lsatPatterns: readonly {
  pattern: string;
  observed: number;
  /** Expected number, mean, spread. */
  onePl: readonly [number, number, number];
  twoPl: readonly [number, number, number];
}[] = [
  { pattern: '00000', observed: 3, onePl: [2.364, -1.9101, 0.7973], twoPl: [2.276, -1.8968, 0.8013] },
  { pattern: '00001', observed: 6, onePl: [5.468, -1.4288, 0.8003], twoPl: [5.862, -1.4748, 0.8023] },
  { pattern: '00010', observed: 2, onePl: [2.474, -1.4288, 0.8003], twoPl: [2.596, -1.4545, 0.8024] },
  { pattern: '00011', observed: 11, onePl: [8.249, -0.9406, 0.8088], twoPl: [8.945, -1.0294, 0.8071] },
  { pattern: '00100', observed: 1, onePl: [0.852, -1.4288, 0.8003], twoPl: [0.696, -1.324, 0.8035] },
  { pattern: '00101', observed: 1, onePl: [2.839, -0.9406, 0.8088], twoPl: [2.613, -0.8972, 0.8093] },
  { pattern: '00110', observed: 3, onePl: [1.285, -0.9406, 0.8088], twoPl: [1.178, -0.8765, 0.8097] },
  { pattern: '00111', observed: 4, onePl: [6.222, -0.4387, 0.8226], twoPl: [5.953, -0.4409, 0.8197] },
  { pattern: '01000', observed: 1, onePl: [1.819, -1.4288, 0.8003], twoPl: [1.84, -1.4324, 0.8026] },
  { pattern: '01001', observed: 8, onePl: [6.063, -0.9406, 0.8088], twoPl: [6.433, -1.007, 0.8075] },
  { pattern: '01010', observed: 0, onePl: [2.744, -0.9406, 0.8088], twoPl: [2.891, -0.9865, 0.8078] },
  { pattern: '01011', observed: 16, onePl: [13.288, -0.4387, 0.8226], twoPl: [13.58, -0.5534, 0.8168] },
  { pattern: '01100', observed: 0, onePl: [0.944, -0.9406, 0.8088], twoPl: [0.852, -0.854, 0.8101] },
  { pattern: '01101', observed: 3, onePl: [4.574, -0.4387, 0.8226], twoPl: [4.369, -0.4178, 0.8203] },
  { pattern: '01110', observed: 2, onePl: [2.07, -0.4387, 0.8226], twoPl: [2, -0.3965, 0.8209] },
  { pattern: '01111', observed: 15, onePl: [14.749, 0.0835, 0.8413], twoPl: [13.916, 0.0536, 0.8354] },
  { pattern: '10000', observed: 10, onePl: [10.273, -1.4288, 0.8003], twoPl: [9.476, -1.3661, 0.8031] },
  { pattern: '10001', observed: 29, onePl: [34.249, -0.9406, 0.8088], twoPl: [34.617, -0.9398, 0.8086] },
  { pattern: '10010', observed: 14, onePl: [15.498, -0.9406, 0.8088], twoPl: [15.589, -0.9192, 0.8089] },
  { pattern: '10011', observed: 81, onePl: [75.06, -0.4387, 0.8226], twoPl: [76.568, -0.4846, 0.8185] },
  { pattern: '10100', observed: 3, onePl: [5.334, -0.9406, 0.8088], twoPl: [4.656, -0.7863, 0.8115] },
  { pattern: '10101', observed: 28, onePl: [25.834, -0.4387, 0.8226], twoPl: [24.983, -0.3483, 0.8223] },
  { pattern: '10110', observed: 15, onePl: [11.69, -0.4387, 0.8226], twoPl: [11.462, -0.327, 0.8229] },
  { pattern: '10111', observed: 80, onePl: [83.31, 0.0835, 0.8413], twoPl: [83.537, 0.1257, 0.838] },
  { pattern: '11000', observed: 16, onePl: [11.391, -0.9406, 0.8088], twoPl: [11.255, -0.8967, 0.8093] },
  { pattern: '11001', observed: 56, onePl: [55.171, -0.4387, 0.8226], twoPl: [56.113, -0.4616, 0.8191] },
  { pattern: '11010', observed: 21, onePl: [24.965, -0.4387, 0.8226], twoPl: [25.652, -0.4404, 0.8197] },
  { pattern: '11011', observed: 173, onePl: [177.918, 0.0835, 0.8413], twoPl: [173.314, 0.0082, 0.8338] },
  { pattern: '11100', observed: 11, onePl: [8.592, -0.4387, 0.8226], twoPl: [8.446, -0.3037, 0.8236] },
  { pattern: '11101', observed: 61, onePl: [61.235, 0.0835, 0.8413], twoPl: [62.519, 0.1498, 0.8389] },
  { pattern: '11110', observed: 28, onePl: [27.709, 0.0835, 0.8413], twoPl: [29.137, 0.172, 0.8398] },
  { pattern: '11111', observed: 298, onePl: [295.767, 0.6322, 0.864], twoPl: [296.679, 0.6456, 0.859] },
];

/** mirt's 2PL fit (61 nodes, tolerance 1e-10): slopes, intercepts d, standard errors of the slopes; difficulty = −d / slope. */
export const lsatTwoPl = {
  slopes: [0.82566, 0.72274, 0.89087, 0.68837, 0.65686],
  intercepts: [2.77323, 0.9902, 0.24915, 1.28476, 2.05327],
  slopeErrors: [0.258, 0.187, 0.233, 0.185, 0.21],
  logLikelihood: -2466.6534,
} as const;
