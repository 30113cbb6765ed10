import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { WrittenQuestion } from '../../questions/written/written-question';
import { CONTENT_TYPE, ITEM_TYPE, type Loss, MANIFEST, MANIFEST_NAMESPACE } from './terms';
import { pictureHref, writeItem } from './write-item';
import { type Xml, xml } from './xml';

export interface Exported {
  /** Hexadecimal. */
  id: string;
  question: WrittenQuestion;
}

/** What becomes of a question in a package. */
export interface ExportLine {
  id: string;
  title: string;
  losses: readonly Loss[];
}

/** Where our own file of a question lies, which holds all of it. */
export function sourcePath(id: string): string {
  return `source/q-${id}.json`;
}

/** A zip knows no time before; the same questions make the same bytes, wherever the clock stands. */
const NO_TIME = '1980-01-01T00:00:00';

/**
 * Writes a package piece by piece, so that ten thousand questions need no more memory than their manifest.
 *
 * @param questions  In the order of the package, each id once.
 * @param pictureOf  The bytes of a picture; undefined where they are gone.
 * @param send  Takes each piece as it is ready.
 * @returns what other readers will not get, by question.
 */
export async function writePackage(
  questions: AsyncIterable<Exported> | Iterable<Exported>,
  pictureOf: (id: string) => Promise<Uint8Array | undefined>,
  send: (piece: Uint8Array) => void | Promise<void>,
): Promise<ExportLine[]> {
  const zip = new Writer();
  const lines: ExportLine[] = [];
  const resources: Xml[] = [];
  const pictures = new Set<string>();
  for await (const { id, question } of questions) {
    const item = writeItem(`q-${id}`, question);
    const used = picturesOf(question);
    zip.add(sourcePath(id), JSON.stringify(question));
    if (item) zip.add(itemPath(id), item.xml);
    resources.push(sourceResource(id), ...(item ? [itemResource(id, used)] : []));
    for (const picture of used.filter((one) => !pictures.has(one))) {
      pictures.add(picture);
      const bytes = await pictureOf(picture);
      if (!bytes) continue;
      zip.add(`pictures/${picture}.webp`, bytes);
      resources.push(pictureResource(picture));
    }
    lines.push({ id, title: question.title, losses: item?.losses ?? ['place-on-drawing'] });
    for (const piece of zip.pieces()) await send(piece);
  }
  zip.add(MANIFEST, manifest(resources).text);
  zip.end();
  for (const piece of zip.pieces()) await send(piece);
  return lines;
}

class Writer {
  #ready: Uint8Array[] = [];
  readonly #zip = new Zip((error, piece) => {
    if (error) throw error;
    this.#ready.push(piece);
  });

  add(name: string, content: string | Uint8Array): void {
    // Pictures are packed already.
    const file = typeof content === 'string' ? new ZipDeflate(name, { level: 6 }) : new ZipPassThrough(name);
    file.mtime = NO_TIME;
    this.#zip.add(file);
    file.push(typeof content === 'string' ? strToU8(content) : content, true);
  }

  end(): void {
    this.#zip.end();
  }

  pieces(): Uint8Array[] {
    const ready = this.#ready;
    this.#ready = [];
    return ready;
  }
}

function itemPath(id: string): string {
  return `items/q-${id}.xml`;
}

function picturesOf({ picture, body }: WrittenQuestion): string[] {
  const all = [picture?.id, body.form === 'spot' ? body.picture.id : undefined];
  return [...new Set(all.filter((id) => id !== undefined))];
}

function itemResource(id: string, pictures: readonly string[]): Xml {
  const path = itemPath(id);
  return xml`<resource identifier="q-${id}" type="${ITEM_TYPE}" href="${path}"><file href="${path}"/>${pictures.map(
    (picture) => xml`<dependency identifierref="p-${picture}"/>`,
  )}<dependency identifierref="s-${id}"/></resource>
`;
}

function sourceResource(id: string): Xml {
  return resource(`s-${id}`, sourcePath(id));
}

function pictureResource(id: string): Xml {
  return resource(`p-${id}`, pictureHref(id).replace('../', ''));
}

function resource(identifier: string, path: string): Xml {
  return xml`<resource identifier="${identifier}" type="${CONTENT_TYPE}" href="${path}"><file href="${path}"/></resource>
`;
}

/** @source IMS Content Packaging 1.2 in the profile of QTI 3.0: metadata, organizations (none), resources, in this order. */
function manifest(resources: readonly Xml[]): Xml {
  return xml`<?xml version="1.0" encoding="UTF-8"?>
<manifest xmlns="${MANIFEST_NAMESPACE}" identifier="questions"><metadata><schema>QTI Package</schema><schemaversion>3.0.0</schemaversion></metadata><organizations/><resources>
${resources}</resources></manifest>
`;
}
