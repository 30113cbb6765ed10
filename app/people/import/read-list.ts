/** As the server takes, with room for what a form wraps around it. */
export const MOST_BYTES = 1_000_000;

export function isTooBig(csv: string): boolean {
  return new TextEncoder().encode(csv).length > MOST_BYTES;
}

/** Text of a file as spreadsheets write them: UTF-8, UTF-16 with its mark, or what older ones on Windows take for text. */
export function textOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
