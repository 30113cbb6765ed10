import type { Draw, DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { bytesOf, hexByte, largestRaw, scaledValue } from '../../shared/bus-parameter';
import { type Choice, shuffledOptions } from '../../shared/shuffled-options';
import type { ReadCodeRanges } from './ranges';
import { ELECTRICAL } from './words';

/** What may stand where a value is looked for. */
const sayings = ['not-available', 'error', 'value'] as const;
type Saying = (typeof sayings)[number];

/** What a byte says that may be no value at all. */
export function specialBytes({ ranges, stream }: Draw<ReadCodeRanges>): DrawnBody {
  const parameter = stream('parameter').pick(ranges.parameters);
  const saying = stream('saying').pick(sayings);
  const raw = rawSaying(saying, parameter.bytes, stream('low').next());
  const value = (number: number): Line => ({
    say: 'special-value',
    with: { value: { quantity: scaledValue(parameter, number), unit: parameter.unit, decimals: parameter.decimals } },
  });
  const scaled = value(raw);
  // A value may be mistaken for nothing at all, too.
  const other = value(0);
  const choices: Choice[] = [
    { line: { say: 'special-not-available' }, ...against(saying, 'not-available') },
    { line: { say: 'special-error' }, ...against(saying, 'error') },
    { line: scaled, ...against(saying, 'value') },
    { line: other, because: { say: 'special-not-zero' } },
  ];
  const { options, right, because } = shuffledOptions(stream('order'), choices);
  const hex = bytesOf(parameter, raw).map(hexByte).join(' ');
  return {
    stem: [
      { say: 'special-stem', with: { spn: String(parameter.spn), bytes: parameter.bytes, hex } },
      { say: 'special-ask' },
    ],
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [
      { say: parameter.bytes === 1 ? 'special-one-byte' : 'special-two-bytes', with: { hex } },
      { say: `special-means-${saying}` },
    ],
    topics: [ELECTRICAL],
    features: { bytes: 1, lookUp: 1 },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: 40,
  };
}

function against(saying: Saying, option: Saying): { because?: Line } {
  return saying === option ? {} : { because: { say: `special-is-${saying}` } };
}

/**
 * A raw number that says it. Of two bytes the high one tells.
 *
 * @source SAE J1939-71: 0xFE error and 0xFF not available, 0xFExx and 0xFFxx for two bytes (from memory).
 */
function rawSaying(saying: Saying, bytes: 1 | 2, chance: number): number {
  const low = Math.floor(chance * 256);
  if (saying === 'value') {
    const most = largestRaw({ bytes });
    // High up, where it looks least like a value.
    return most - Math.floor(chance * (bytes === 1 ? 40 : 8000));
  }
  const high = saying === 'error' ? 0xfe : 0xff;
  if (bytes === 1) return high;
  return saying === 'error' ? high * 256 + low : 0xffff;
}
