import type { ItemMetadata } from './read-item';
import { childrenOf, elementsIn, findElement, textOf, type XmlElement } from './read-xml';
import { CONTENT_TYPE, ITEM_TYPE, MANIFEST_NAMESPACE } from './terms';

/** Something in a package that stands for a question. */
export interface Listed {
  /** The file of its item, or our own where no item could hold it. */
  path: string;
  metadata: ItemMetadata;
}

const SOURCE = /^source\/q-([0-9a-f]{1,40})\.json$/;

/**
 * The questions that a manifest lists, in its order; undefined where it is none of QTI 3.0.
 *
 * @param topics  Those there are: keywords that name one are taken for topics.
 */
export function readManifest(manifest: XmlElement, topics: ReadonlySet<string>): Listed[] | undefined {
  if (manifest.name !== 'manifest' || manifest.namespace !== MANIFEST_NAMESPACE) return undefined;
  const resources = childrenOf(manifest, 'resources').flatMap((list) => childrenOf(list, 'resource'));
  const items = resources.filter(({ attributes }) => attributes.type === ITEM_TYPE);
  const withItem = new Set(items.map(({ attributes }) => attributes.identifier));
  const alone = resources.filter(({ attributes: { type, href = '' } }) => {
    const [, id] = SOURCE.exec(href) ?? [];
    return type === CONTENT_TYPE && id !== undefined && !withItem.has(`q-${id}`);
  });
  const wanted = new Set([...items, ...alone]);
  return resources
    .filter((resource) => wanted.has(resource))
    .map((resource) => ({ path: pathOf(resource), metadata: metadataOf(resource, topics) }));
}

function pathOf(resource: XmlElement): string {
  return resource.attributes.href ?? childrenOf(resource, 'file')[0]?.attributes.href ?? '';
}

/** @source IEEE 1484.12.1 (LOM) 1.5, 5.9, from memory */
function metadataOf(resource: XmlElement, topics: ReadonlySet<string>): ItemMetadata {
  const [metadata] = childrenOf(resource, 'metadata');
  const within = metadata ? [...elementsIn(metadata)] : [];
  const keywords = within.filter(({ name }) => name === 'keyword').map((keyword) => textOf(keyword).trim());
  const time = metadata && findElement(metadata, 'typicalLearningTime');
  const duration = time && findElement(time, 'duration');
  const seconds = duration && secondsOf(textOf(duration).trim());
  return {
    topics: [...new Set(keywords.filter((word) => topics.has(word)))].slice(0, 3),
    ...(seconds !== undefined && { seconds }),
  };
}

/** @source ISO 8601, durations of hours, minutes and seconds */
function secondsOf(duration: string): number | undefined {
  const found = /^PT(?:(\d{1,3})H)?(?:(\d{1,5})M)?(?:(\d{1,6})(?:\.\d+)?S)?$/.exec(duration);
  const [hours = 0, minutes = 0, seconds = 0] = found?.slice(1).map((part) => Number(part ?? 0)) ?? [];
  const all = 3600 * hours + 60 * minutes + seconds;
  return all > 0 ? Math.min(3600, Math.max(10, all)) : undefined;
}
