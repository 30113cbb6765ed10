import { strFromU8 } from 'fflate';
import { type WrittenQuestion, writtenQuestionSchema } from '../../questions/written/written-question';
import { type PictureIn, readItem } from './read-item';
import { childrenOf, elementsIn, readXml, type XmlElement } from './read-xml';
import { ITEM_TYPE, MANIFEST, MANIFEST_NAMESPACE, type Refused, type Warning } from './terms';
import { type Files, isPlainPath, unzipSafely, usualLimits, type ZipLimits } from './unzip-safely';
import { sourcePath } from './write-package';

/** Most items that are taken at once. */
const MOST_ITEMS = 10_000;

export interface TakenItem {
  file: string;
  question: WrittenQuestion;
  warnings: readonly Warning[];
}

export interface TakenPicture {
  id: string;
  width: number;
  height: number;
}

/** Makes a picture of ours of one in the package; undefined where it is none. */
export type TakePicture = (bytes: Uint8Array) => Promise<TakenPicture | undefined>;

/**
 * The questions of a QTI 3.0 package. Our own come back whole, by our own file beside each; others by what their items say.
 *
 * @param takePicture  Asked once for each picture that an item shows.
 */
export async function readPackage(
  bytes: Uint8Array,
  { topic, takePicture, limits = usualLimits }: { topic: string; takePicture: TakePicture; limits?: ZipLimits },
): Promise<{ items: (TakenItem | Refused)[] } | Refused> {
  const files = unzipSafely(bytes, limits);
  if ('refused' in files) return files as Refused;
  const manifest = files.get(MANIFEST);
  if (!manifest) return { refused: 'no-manifest', file: MANIFEST, what: '' };
  const root = readXml(manifest, MANIFEST);
  if ('refused' in root) return root;
  if (root.name !== 'manifest' || !strFromU8(manifest).includes(MANIFEST_NAMESPACE))
    return { refused: 'not-qti-3', file: MANIFEST, what: root.name };
  const paths = itemPaths(root);
  if (paths.length > MOST_ITEMS) return { refused: 'too-many-items', file: MANIFEST, what: String(MOST_ITEMS) };
  const taking = new TakingItems(files, topic, takePicture);
  const items: (TakenItem | Refused)[] = [];
  for (const path of paths) items.push(await taking.item(path));
  return { items };
}

function itemPaths(manifest: XmlElement): string[] {
  return [...elementsIn(manifest)]
    .filter(({ name, attributes }) => name === 'resource' && attributes.type?.startsWith(ITEM_TYPE))
    .map((resource) => resource.attributes.href ?? childrenOf(resource, 'file')[0]?.attributes.href ?? '');
}

class TakingItems {
  readonly #pictures = new Map<string, TakenPicture | undefined>();

  constructor(
    readonly files: Files,
    readonly topic: string,
    readonly takePicture: TakePicture,
  ) {}

  async item(path: string): Promise<TakenItem | Refused> {
    if (!isPlainPath(path)) return { refused: 'bad-path', file: path, what: '' };
    const bytes = this.files.get(path);
    if (!bytes) return { refused: 'file-missing', file: path, what: path };
    const root = readXml(bytes, path);
    if ('refused' in root) return root;
    for (const picture of picturesNamed(root, path)) await this.#take(picture);
    const read = this.#ownSource(root) ?? readItem(root, this.#pictureFrom(path), this.topic);
    if ('refused' in read) return { ...read, file: path };
    const parsed = writtenQuestionSchema.safeParse(read.question);
    if (parsed.success) return { file: path, question: parsed.data, warnings: read.warnings };
    const [issue] = parsed.error.issues;
    return { refused: 'not-valid', file: path, what: `${issue?.path.join('.')}: ${issue?.message}` };
  }

  /** Our own file of a question, where the item is one of ours. Somebody who changed the item took that file out. */
  #ownSource({ attributes }: XmlElement): { question: WrittenQuestion; warnings: Warning[] } | undefined {
    const id = /^q-([0-9a-f]+)$/.exec(attributes.identifier ?? '')?.[1];
    const bytes = id === undefined ? undefined : this.files.get(sourcePath(id));
    if (!bytes) return undefined;
    const parsed = writtenQuestionSchema.safeParse(parseJson(strFromU8(bytes)));
    if (!parsed.success) return undefined;
    const warnings: Warning[] = [];
    return { question: this.#withPictures(parsed.data, warnings), warnings };
  }

  #withPictures(question: WrittenQuestion, warnings: Warning[]): WrittenQuestion {
    const { picture, body, ...rest } = question;
    const taken = picture && this.#picture(`pictures/${picture.id}.webp`);
    if (picture && !taken) warnings.push('picture-missing');
    const on = body.form === 'spot' ? this.#picture(`pictures/${body.picture.id}.webp`) : undefined;
    return {
      ...rest,
      ...(picture && taken && { picture: { ...picture, ...taken } }),
      body: body.form === 'spot' && on ? { ...body, picture: { ...body.picture, ...on } } : body,
    };
  }

  #pictureFrom(item: string): PictureIn {
    return (href) => {
      const path = pathFrom(item, href);
      return path === undefined ? undefined : this.#picture(path);
    };
  }

  #picture(path: string): TakenPicture | undefined {
    return this.#pictures.get(path);
  }

  async #take(path: string): Promise<void> {
    if (this.#pictures.has(path)) return;
    const bytes = this.files.get(path);
    this.#pictures.set(path, bytes && (await this.takePicture(bytes)));
  }
}

/** Files in the package that an item shows. */
function picturesNamed(item: XmlElement, file: string): string[] {
  const named = [...elementsIn(item)].map(({ attributes }) => attributes.src ?? attributes.data ?? '');
  return [...new Set(named.flatMap((href) => pathFrom(file, href) ?? []))];
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
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
