import { strFromU8 } from 'fflate';
import type { z } from 'zod';
import { type WrittenQuestion, writtenQuestionSchema } from '../../questions/written/written-question';
import type { PictureIn } from './item-parts';
import { type ReadItem, readItem } from './read-item';
import { type Listed, readManifest } from './read-manifest';
import { elementsIn, readXml, type XmlElement } from './read-xml';
import { MANIFEST, type Refused, type Warning } from './terms';
import { type Files, isPlainPath, unzipSafely, usualLimits, type ZipLimits } from './unzip-safely';
import { pictureHref, writeItem } from './write-item';
import { sourcePath } from './write-package';

/** Most questions that are taken at once. */
export const MOST_ITEMS = 2000;

/** Largest file that is read as XML, besides the manifest. */
const MOST_XML_BYTES = 2 ** 20;

export interface TakenItem {
  file: string;
  question: WrittenQuestion;
  warnings: readonly Warning[];
}

/** An item that is not taken. `issues` says what the question that it makes has wrong. */
export type RefusedItem = Refused & { title?: string; issues?: readonly z.core.$ZodIssue[] };

export interface TakenPicture {
  id: string;
  width: number;
  height: number;
}

/** Makes a picture of ours of one in the package; undefined where it is none. */
export type TakePicture = (bytes: Uint8Array) => Promise<TakenPicture | undefined>;

export interface Taking {
  /** Given to what names none of those there are. */
  topic: string;
  topics: ReadonlySet<string>;
  /** Asked once for each picture that an item shows. */
  takePicture: TakePicture;
  /** Waited for after each item, for whoever lets others have their turn. */
  pause?: () => Promise<void>;
  limits?: ZipLimits;
}

/**
 * The questions of a QTI 3.0 package. Our own come back whole, by our own file beside each; others by what their items say.
 *
 * @returns why nothing of it is taken, or every question in the order of the manifest.
 */
export async function readPackage(
  bytes: Uint8Array,
  { topic, topics, takePicture, pause, limits = usualLimits }: Taking,
): Promise<{ items: (TakenItem | RefusedItem)[] } | Refused> {
  const files = unzipSafely(bytes, limits);
  if ('refused' in files) return files as Refused;
  const manifest = files.get(MANIFEST);
  if (!manifest) return { refused: 'no-manifest', file: MANIFEST, what: '' };
  const root = readXml(manifest, MANIFEST);
  if ('refused' in root) return root;
  const listed = readManifest(root, topics);
  if (!listed) return { refused: 'not-qti-3', file: MANIFEST, what: root.name, line: root.line };
  if (listed.length === 0) return { refused: 'nothing-in-it', file: MANIFEST, what: '' };
  if (listed.length > MOST_ITEMS) return { refused: 'too-many-items', file: MANIFEST, what: String(MOST_ITEMS) };
  const taking = new TakingItems(files, topic, takePicture);
  const items: (TakenItem | RefusedItem)[] = [];
  for (const one of listed) {
    items.push(await taking.item(one));
    await pause?.();
  }
  return { items };
}

/** `isOurs` where it came out of our own file, and is valid. */
type Read = (ReadItem & { isOurs?: true }) | (Omit<Refused, 'file'> & { isOurs?: never });

class TakingItems {
  readonly #pictures = new Map<string, TakenPicture | undefined>();

  constructor(
    readonly files: Files,
    readonly topic: string,
    readonly takePicture: TakePicture,
  ) {}

  async item({ path, metadata }: Listed): Promise<TakenItem | RefusedItem> {
    if (!isPlainPath(path)) return { refused: 'bad-path', file: path.slice(0, 200), what: '' };
    const bytes = this.files.get(path);
    if (!bytes) return { refused: 'file-missing', file: path, what: path };
    if (bytes.length > MOST_XML_BYTES) return { refused: 'too-large', file: path, what: path };
    const read = path.endsWith('.json') ? await this.#alone(path) : await this.#read(path, bytes, metadata);
    if ('refused' in read) return { ...read, file: path };
    const { question, warnings } = read;
    if (read.isOurs) return { file: path, question, warnings };
    const parsed = writtenQuestionSchema.safeParse(question);
    if (parsed.success) return { file: path, question: parsed.data, warnings };
    const { issues } = parsed.error;
    return { refused: 'not-valid', file: path, what: '', title: question.title.slice(0, 200), issues };
  }

  async #read(path: string, bytes: Uint8Array, metadata: Listed['metadata']): Promise<Read> {
    const root = readXml(bytes, path);
    if ('refused' in root) return root;
    const { identifier = '' } = root.attributes;
    const source = /^q-[0-9a-f]{1,40}$/.test(identifier) ? this.#source(sourcePath(identifier.slice(2))) : undefined;
    if (source && writeItem(identifier, source) === strFromU8(bytes)) return this.#whole(source);
    for (const picture of picturesNamed(root, path)) await this.#take(picture);
    const read = readItem(root, this.#pictureFrom(path), { topic: this.topic, metadata });
    if ('refused' in read || !source) return read;
    // Somebody changed the item elsewhere: what it says counts, and what it cannot say is ours.
    const { topics, difficulty, seconds } = source;
    const kept = read.warnings.filter((warning) => !/-assumed$/.test(warning));
    return { question: { ...read.question, topics, difficulty, seconds }, warnings: [...kept, 'changed-elsewhere'] };
  }

  /** A question that no item could hold. */
  async #alone(path: string): Promise<Read> {
    const source = this.#source(path);
    return source ? this.#whole(source) : { refused: 'not-valid', what: '' };
  }

  #source(path: string): WrittenQuestion | undefined {
    const bytes = this.files.get(path);
    const parsed = bytes && writtenQuestionSchema.safeParse(parseJson(bytes));
    return parsed?.success ? parsed.data : undefined;
  }

  /** A question as our own file has it, with its pictures as they are taken here. */
  async #whole({ picture, body, ...rest }: WrittenQuestion): Promise<Read> {
    const [beside, on] = [picture, body.form === 'spot' ? body.picture : undefined];
    for (const one of [beside, on]) if (one) await this.#take(packed(one.id));
    const taken = beside && this.#pictures.get(packed(beside.id));
    const answered = on && this.#pictures.get(packed(on.id));
    if (on && !answered) return { refused: 'picture-unusable', what: packed(on.id) };
    const question: WrittenQuestion = {
      ...rest,
      ...(beside && taken && { picture: { ...beside, ...taken } }),
      body: body.form === 'spot' && answered ? { ...body, picture: { ...body.picture, ...answered } } : body,
    };
    return { question, warnings: beside && !taken ? ['picture-missing'] : [], isOurs: true };
  }

  #pictureFrom(item: string): PictureIn {
    return (href) => {
      const path = pathFrom(item, href);
      return path === undefined ? undefined : this.#pictures.get(path);
    };
  }

  async #take(path: string): Promise<void> {
    if (this.#pictures.has(path)) return;
    const bytes = this.files.get(path);
    this.#pictures.set(path, bytes && (await this.takePicture(bytes)));
  }
}

/** Where a picture of ours lies in a package. */
function packed(id: string): string {
  return pictureHref(id).replace('../', '');
}

/** Files in the package that an item shows. */
function picturesNamed(item: XmlElement, file: string): string[] {
  const named = [...elementsIn(item)].map(({ attributes }) => attributes.src ?? attributes.data ?? '');
  return [...new Set(named.flatMap((href) => pathFrom(file, href) ?? []))];
}

function parseJson(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

/** A path in the package, seen from a file in it; undefined where it leads elsewhere. */
export function pathFrom(file: string, href: string): string | undefined {
  if (href === '' || /^[a-z][a-z0-9+.-]*:|^\/|[\\?#]/i.test(href)) return undefined;
  const parts = file.split('/').slice(0, -1);
  for (const part of href.split('/')) {
    if (part === '..') {
      if (parts.pop() === undefined) return undefined;
    } else if (part !== '.') parts.push(part);
  }
  const path = parts.join('/');
  return isPlainPath(path) ? path : undefined;
}
