import type { RandomStream } from '../../../random';
import type { NumberKey, NumberPart } from '../../answer';
import type { Draw, DrawnBody } from '../../kind';
import type { Line, Value } from '../../line';
import { hexByte } from '../../shared/bus-parameter';
import type { ReadCodeRanges } from './ranges';
import { ELECTRICAL } from './words';

interface Stored {
  spn: number;
  fmi: number;
  /** How often it has come, 1…126. */
  often: number;
}

/**
 * A trouble code's four bytes, as a message of active codes carries them: SPN bits 1–8, 9–16, then bits 17–19 above the
 * five of the FMI, then a bit 0 above the seven of the count.
 *
 * @source SAE J1939-73, conversion method version 4 (from memory).
 */
export function bytesOfCode({ spn, fmi, often }: Stored): [number, number, number, number] {
  return [spn % 256, Math.floor(spn / 256) % 256, Math.floor(spn / 65536) * 32 + fmi, often];
}

/** Four bytes to a code, or a code to its bytes. */
export function troubleBytes({ rig, ranges, catalogue, stream }: Draw<ReadCodeRanges>): DrawnBody {
  const stored = drawStored(stream, ranges, Object.keys(catalogue.codeNames.fmi), rig.codes);
  return stream('way').next() < 0.5 ? toCode(stored) : toBytes(stored);
}

function drawStored(
  stream: (name: string) => RandomStream,
  { makersOwn: [from, to], mostOften }: ReadCodeRanges,
  modes: readonly string[],
  codes: readonly { spn: number }[],
): Stored {
  const own = stream('own').next() < 0.5;
  const spn = own ? Math.floor(stream('own number').between(from, to)) : stream('spn').pick(codes).spn;
  return {
    spn,
    fmi: Number(stream('fmi').pick(modes)),
    often: 1 + Math.floor(stream('often').between(0, mostOften)),
  };
}

function toCode(stored: Stored): DrawnBody {
  const { spn, fmi, often } = stored;
  const [first, second, third, fourth] = bytesOfCode(stored);
  const top = Math.floor(third / 32);
  const values = { ...worded(stored), hex: [first, second, third, fourth].map(hexByte).join(' ') };
  return body(stored, {
    stem: [{ say: 'bytes-layout' }, { say: 'bytes-to-code', with: { hex: values.hex } }],
    parts: {
      spn: {
        value: spn,
        tolerance: 0.4,
        slips: [
          ...clear('bytes-swapped', first * 256 + second + top * 65536, spn),
          ...clear('top-bits-left-out', first + 256 * second, spn),
        ],
      },
      fmi: { value: fmi, tolerance: 0.4, slips: clear('whole-byte', third, fmi) },
      often: { value: often, tolerance: 0.4, slips: clear('hex-as-decimal', Number(hexByte(often)), often) },
    },
    explanation: [
      { say: 'bytes-split', with: values },
      { say: 'bytes-join', with: values },
      { say: 'bytes-count', with: values },
    ],
  });
}

function toBytes(stored: Stored): DrawnBody {
  const [first, second, third] = bytesOfCode(stored);
  const values = worded(stored);
  const { spn, fmi, often } = values;
  return body(stored, {
    stem: [{ say: 'bytes-layout' }, { say: 'bytes-from-code', with: { spn, fmi, often } }],
    parts: {
      first: { value: first, tolerance: 0.4, slips: clear('bytes-swapped', second, first) },
      second: { value: second, tolerance: 0.4, slips: clear('bytes-swapped', first, second) },
      third: { value: third, tolerance: 0.4, slips: clear('mode-alone', stored.fmi, third) },
    },
    explanation: [
      { say: 'bytes-divide', with: values },
      { say: 'bytes-third-step', with: values },
    ],
  });
}

/** A slip, where it leads to another number at all. */
function clear(say: string, value: number, right: number): NumberKey['slips'] {
  return Number.isFinite(value) && value !== right ? [{ value, line: { say: `slip-${say}` } }] : [];
}

interface Asked {
  stem: Line[];
  parts: Readonly<Record<string, NumberKey>>;
  explanation: Line[];
}

function body({ spn }: Stored, { stem, parts, explanation }: Asked): DrawnBody {
  const form: NumberPart[] = Object.keys(parts).map((id) => ({ id, line: { say: `bytes-${id}` }, units: [] }));
  return {
    stem,
    answer: { form: 'numbers', parts: form },
    key: { form: 'numbers', parts },
    explanation,
    topics: [ELECTRICAL],
    features: { bytes: 1, topBits: Number(spn > 65535) },
    guessFloor: 0,
    steps: form.length,
    seconds: 150,
  };
}

function worded(stored: Stored) {
  const [first, second, third] = bytesOfCode(stored);
  const number = (value: number): Value => ({ number: value, decimals: 0 });
  return {
    spn: String(stored.spn),
    fmi: String(stored.fmi),
    often: String(stored.often),
    first: number(first),
    second: number(second),
    third: number(third),
    top: number(Math.floor(third / 32)),
    rest: number(stored.spn % 65536),
    hexOften: hexByte(stored.often),
  };
}
