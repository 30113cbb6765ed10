import { z } from 'zod';

/** How a value of the bus is made of its bytes. */
export const parameterSchema = z.strictObject({
  /** Suspect parameter number. */
  spn: z.int().positive(),
  bytes: z.union([z.literal(1), z.literal(2)]),
  /** Value of one bit. */
  perBit: z.number().positive(),
  /** Value of a raw number of 0. */
  offset: z.number(),
});

export type Parameter = z.infer<typeof parameterSchema>;

/**
 * Largest raw number that stands for a value; what lies above says something else.
 *
 * @source SAE J1939-71, ranges of transmitted signals: 0xFA and 0xFAFF (from memory; agrees with the published ranges).
 */
export function largestRaw({ bytes }: Pick<Parameter, 'bytes'>): number {
  return bytes === 1 ? 0xfa : 0xfaff;
}

/** value = raw × resolution + offset. @source SAE J1939-71 (from memory). */
export function scaledValue({ perBit, offset }: Parameter, raw: number): number {
  return raw * perBit + offset;
}

/** The raw number nearest to a value, within what may be sent. */
export function rawOf(parameter: Parameter, value: number): number {
  const raw = Math.round((value - parameter.offset) / parameter.perBit);
  return Math.min(Math.max(0, raw), largestRaw(parameter));
}

/** Bytes in the order they are sent: the least significant first. @source SAE J1939-21 (from memory). */
export function bytesOf({ bytes }: Pick<Parameter, 'bytes'>, raw: number): number[] {
  return bytes === 1 ? [raw] : [raw % 256, Math.floor(raw / 256)];
}

export function hexByte(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}
