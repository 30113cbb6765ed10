import type { WrittenQuestion } from '../../questions/written/written-question';
import { ItemParts, type PictureIn } from './item-parts';
import { type ItemRefusal, readInteraction } from './read-interaction';
import { childrenOf, elementsIn, findElement, type XmlElement, type XmlNode } from './read-xml';
import { ITEM_NAMESPACE, type Warning } from './terms';

export interface ReadItem {
  /** As the standard's own elements say it; whether it is a valid question is for the schema to say. */
  question: WrittenQuestion;
  warnings: Warning[];
}

/** What the manifest of a package says of an item. */
export interface ItemMetadata {
  topics: readonly string[];
  seconds?: number;
}

/** What an item of somebody else's lacks. Assumed; whoever takes it over puts it right. */
const USUAL = { difficulty: 0, seconds: 60 };

const INTERACTION = /^qti-.*-interaction$/;

/**
 * An assessment item as a written question.
 *
 * @param known  What is known of it beside; a topic is given to it where its own are not known.
 */
export function readItem(
  item: XmlElement,
  pictureIn: PictureIn,
  { topic, metadata }: { topic: string; metadata: ItemMetadata },
): ReadItem | ItemRefusal {
  const { line } = item;
  if (item.name !== 'qti-assessment-item' || item.namespace !== ITEM_NAMESPACE)
    return { refused: 'not-qti-3', what: item.name, line };
  const body = findElement(item, 'qti-item-body');
  const interactions = body ? [...elementsIn(body)].filter(({ name }) => INTERACTION.test(name)) : [];
  const [interaction, second] = interactions;
  if (!body || !interaction) return { refused: 'unknown-interaction', what: 'qti-item-body', line };
  if (second) return { refused: 'several-interactions', what: second.name, line: second.line };
  const parts = new ItemParts(item, interaction, pictureIn);
  const read = readInteraction(parts);
  if ('refused' in read) return read;
  const shown = withoutInteraction(body, interaction);
  const picture = read.form === 'spot' ? undefined : pictureOf(parts, shown);
  const question: WrittenQuestion = {
    title: oneLine(item.attributes.title ?? '') || '–',
    stem: parts.markdown(shown) || '–',
    topics: [...(metadata.topics.length > 0 ? metadata.topics : [topic])],
    ...USUAL,
    ...(metadata.seconds !== undefined && { seconds: metadata.seconds }),
    explanation: explanationOf(parts),
    ...(picture && { picture }),
    body: read,
  };
  parts.warn('difficulty-assumed');
  if (metadata.topics.length === 0) parts.warn('topic-assumed');
  if (metadata.seconds === undefined) parts.warn('time-assumed');
  if (!isKnownMarking(item)) parts.warn('marking-dropped');
  return { question, warnings: [...parts.warnings] };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** The body's content but for what is answered and what is for markers; the prompt inside that belongs to the stem. */
function withoutInteraction({ children }: XmlElement, interaction: XmlElement): XmlNode[] {
  return children.flatMap((child): XmlNode[] => {
    if (typeof child === 'string') return [child];
    if (child === interaction) return childrenOf(interaction, 'qti-prompt');
    if (child.name === 'qti-rubric-block') return [];
    const isAround = [...elementsIn(child)].includes(interaction);
    // What stands around a blank, such as its unit, is no part of what is asked.
    if (isAround && interaction.name === 'qti-text-entry-interaction' && isShort(child)) return [];
    return [{ ...child, children: withoutInteraction(child, interaction) }];
  });
}

function isShort({ children }: XmlElement): boolean {
  const text = children.map((child) => (typeof child === 'string' ? child : '')).join('');
  return text.trim().length <= 'US gal/min'.length;
}

function pictureOf(parts: ItemParts, shown: readonly XmlNode[]): WrittenQuestion['picture'] {
  const images = shown
    .flatMap((node) => (typeof node === 'string' ? [] : [node, ...elementsIn(node)]))
    .filter(({ name }) => name === 'img');
  const [image] = images;
  if (!image) return undefined;
  if (images.length > 1) parts.warn('pictures-dropped');
  const found = parts.pictureIn(image.attributes.src ?? '');
  if (!found) parts.warn('picture-missing');
  return found && { ...found, alt: oneLine(image.attributes.alt ?? '') || '–' };
}

function explanationOf(parts: ItemParts): string {
  const feedback = parts.otherFeedback();
  const [said] = feedback;
  if (feedback.length > 1) parts.warn('feedback-dropped');
  if (!said) parts.warn('explanation-missing');
  return (said && parts.markdown(said.children)) || '–';
}

/** Templates of the standard whose marks ours give too. */
const TEMPLATE = /\/rptemplates\/(match_correct|map_response)(\.xml)?$/;
/** Rules that come to the same: what is right is worth something, and feedback follows the answer. */
const RULES = new Set(
  'response-condition response-if response-else match equal or member multiple variable correct map-response base-value set-outcome-value is-null'
    .split(' ')
    .map((name) => `qti-${name}`),
);

function isKnownMarking(item: XmlElement): boolean {
  const [processing] = childrenOf(item, 'qti-response-processing');
  if (!processing) return true;
  const { template } = processing.attributes;
  if (template !== undefined) return TEMPLATE.test(template);
  return [...elementsIn(processing)].every(({ name }) => RULES.has(name));
}
