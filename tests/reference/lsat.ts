import { type Responses, responsesFrom } from '@/lib/statistics/responses';

/**
 * Section 6 of the Law School Admission Test, five items, 1,000 people: how many gave each pattern of right (1) and wrong.
 * Bock & Lieberman 1970, Psychometrika 35, as the data set `LSAT` of the R package ltm (seen) has it.
 */
const patterns: Readonly<Record<string, number>> = {
  '00000': 3,
  '00001': 6,
  '00010': 2,
  '00011': 11,
  '00100': 1,
  '00101': 1,
  '00110': 3,
  '00111': 4,
  '01000': 1,
  '01001': 8,
  '01011': 16,
  '01101': 3,
  '01110': 2,
  '01111': 15,
  '10000': 10,
  '10001': 29,
  '10010': 14,
  '10011': 81,
  '10100': 3,
  '10101': 28,
  '10110': 15,
  '10111': 80,
  '11000': 16,
  '11001': 56,
  '11010': 21,
  '11011': 173,
  '11100': 11,
  '11101': 61,
  '11110': 28,
  '11111': 298,
};

export function lsatResponses(): Responses {
  return responsesFrom(
    Object.entries(patterns).flatMap(([pattern, count]) => new Array(count).fill([...pattern].map(Number))),
  );
}
