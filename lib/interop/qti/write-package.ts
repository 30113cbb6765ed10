import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { WrittenQuestion } from '../../questions/written/written-question';
import { CONTENT_TYPE, ITEM_TYPE, MANIFEST, MANIFEST_NAMESPACE, METADATA_NAMESPACE } from './terms';
import { pictureHref, writeItem } from './write-item';
import { type Xml, xml } from './xml';

export interface Exported {
  /** Hexadecimal. */
  id: string;
  question: WrittenQuestion;
}

/** A zip counts its files in sixteen bits: no package holds more questions, with room for pictures. */
export const MOST_EXPORTED = 20_000;

/** Where our own file of a question lies, which holds all of it. */
export function sourcePath(id: string): string {
  return `source/q-${id}.json`;
}

/** A zip knows no time before; the same questions make the same bytes, wherever the clock stands. */
const NO_TIME = '1980-01-01T00:00:00';

/**
 * A package piece by piece, so that ten thousand questions need no more memory than their manifest.
 *
 * @param questions  In the order of the package, each id once.
 * @param pictureOf  The bytes of a picture; undefined where they are gone.
 */
export async function* packagePieces(
  questions: AsyncIterable<Exported> | Iterable<Exported>,
  pictureOf: (id: string) => Promise<Uint8Array | undefined>,
): AsyncGenerator<Uint8Array> {
  const zip = new Writer();
  const resources: Xml[] = [];
  const pictures = new Set<string>();
  for await (const { id, question } of questions) {
    for (const picture of picturesOf(question).filter((one) => !pictures.has(one))) {
      const bytes = await pictureOf(picture);
      if (!bytes) continue;
      pictures.add(picture);
      zip.add(`pictures/${picture}.webp`, bytes);
      resources.push(resource(`p-${picture}`, pictureHref(picture).replace('../', '')));
    }
    const used = picturesOf(question);
    // Without its picture an item would show nothing; our own file keeps what it says.
    const item = used.every((one) => pictures.has(one)) ? writeItem(`q-${id}`, question) : undefined;
    zip.add(sourcePath(id), JSON.stringify(question));
    resources.push(resource(`s-${id}`, sourcePath(id)));
    if (item !== undefined) {
      zip.add(itemPath(id), item);
      resources.push(itemResource(id, question, used));
    }
    yield* zip.pieces();
  }
  zip.add(MANIFEST, manifest(resources).text);
  zip.end();
  yield* zip.pieces();
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

function itemResource(id: string, question: WrittenQuestion, pictures: readonly string[]): Xml {
  const path = itemPath(id);
  const needed = [...pictures.map((picture) => `p-${picture}`), `s-${id}`];
  return xml`<resource identifier="q-${id}" type="${ITEM_TYPE}" href="${path}"><metadata>${metadata(question)}</metadata><file href="${path}"/>${needed.map(
    (one) => xml`<dependency identifierref="${one}"/>`,
  )}</resource>
`;
}

/** @source IEEE 1484.12.1 (LOM) 1.2, 1.5, 5.9, in the binding IEEE 1484.12.3, from memory */
function metadata({ title, topics, seconds }: WrittenQuestion): Xml {
  const string = (text: string) => xml`<string language="en">${text}</string>`;
  const keywords = topics.map((topic) => xml`<keyword>${string(topic)}</keyword>`);
  return xml`<lom xmlns="${METADATA_NAMESPACE}"><general><title>${string(title)}</title>${keywords}</general><educational><typicalLearningTime><duration>PT${seconds}S</duration></typicalLearningTime></educational></lom>`;
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
