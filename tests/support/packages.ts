import { strToU8, type Zippable, zipSync } from 'fflate';
import { MANIFEST } from '@/lib/interop/qti/terms';
import { type Exported, packagePieces } from '@/lib/interop/qti/write-package';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';

/** Ids as the database gives them. */
export function numbered(questions: readonly WrittenQuestion[]): Exported[] {
  return questions.map((question, index) => ({ id: index.toString(16).padStart(20, '0'), question }));
}

/** A whole package, in memory. */
export async function packed(
  questions: readonly WrittenQuestion[],
  pictureOf: (id: string) => Promise<Uint8Array | undefined> = async () => undefined,
): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of packagePieces(numbered(questions), pictureOf)) pieces.push(piece);
  return new Uint8Array(Buffer.concat(pieces));
}

/** A package of files as somebody else might make it. */
export function zipOf(files: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const entries = Object.entries(files).map(([name, content]) => [
    name,
    typeof content === 'string' ? strToU8(content) : content,
  ]);
  return zipSync(Object.fromEntries(entries) as Zippable, { mtime: '1980-01-01T00:00:00' });
}

const MANIFEST_START = '<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" identifier="m">';

/** A manifest that names items. */
export function manifestOf(...paths: readonly string[]): string {
  const resources = paths.map(
    (path, index) =>
      `<resource identifier="r${index}" type="imsqti_item_xmlv3p0" href="${path}"><file href="${path}"/></resource>`,
  );
  return `${MANIFEST_START}<resources>${resources.join('')}</resources></manifest>`;
}

/** A package with one item. */
export function packageOf(item: string): Uint8Array {
  return zipOf({ [MANIFEST]: manifestOf('items/one.xml'), 'items/one.xml': item });
}

/** An item around its body, as the standard orders its parts. */
export function itemOf({
  declaration,
  body,
  processing = '',
}: {
  declaration: string;
  body: string;
  processing?: string;
}) {
  return `<?xml version="1.0" encoding="UTF-8"?>
<qti-assessment-item xmlns="http://www.imsglobal.org/xsd/imsqtiasi_v3p0" identifier="x" title="From elsewhere" adaptive="false" time-dependent="false" xml:lang="en">${declaration}<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float"/><qti-item-body>${body}</qti-item-body>${processing}</qti-assessment-item>`;
}
