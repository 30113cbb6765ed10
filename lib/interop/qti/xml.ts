/** XML that is already written, not to be written as text. */
export class Xml {
  constructor(readonly text: string) {}
}

type Piece = Xml | string | number | boolean | undefined | readonly Xml[];

/** Writes XML: what is put in stands as text, unless it is XML itself. Nothing stands for undefined. */
export function xml(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Xml {
  return new Xml(
    strings.reduce((text, part, index) => text + part + (index < pieces.length ? write(pieces[index]) : ''), ''),
  );
}

function write(piece: Piece): string {
  if (piece === undefined) return '';
  if (piece instanceof Xml) return piece.text;
  return Array.isArray(piece) ? piece.map(({ text }) => text).join('') : asText(String(piece));
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Signs that XML has no room for at all are left out. @source XML 1.0, 2.2 */
function asText(text: string): string {
  return [...text]
    .filter(isAllowed)
    .map((sign) => ENTITIES[sign] ?? sign)
    .join('');
}

function isAllowed(sign: string): boolean {
  const code = sign.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}
