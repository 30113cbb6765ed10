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

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  // A reader would take it for the end of a line.
  '\r': '&#13;',
};

function asText(text: string): string {
  return xmlSigns(text).replace(/[&<>"\r]/g, (sign) => ENTITIES[sign] ?? sign);
}

const NO_SIGNS = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

/** A text without the signs that XML has no room for at all. @source XML 1.0, 2.2 */
export function xmlSigns(text: string): string {
  return text.replace(NO_SIGNS, '');
}
