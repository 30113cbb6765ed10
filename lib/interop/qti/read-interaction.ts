import { MOST_CHARACTERS } from '../../questions/answer';
import type { WrittenBody } from '../../questions/written/written-question';
import type { ItemParts } from './item-parts';
import { numberOf } from './read-expression';
import { readTemplate } from './read-template';
import { childrenOf, elementsIn, findElement, type XmlElement } from './read-xml';
import type { Refusal } from './terms';

/** Why an item is not taken, and the element that it stands on. */
export interface ItemRefusal {
  refused: Refusal;
  what: string;
  line: number;
}

type Read = WrittenBody | ItemRefusal;

/** How an item is answered, as a form of ours. */
export function readInteraction(parts: ItemParts): Read {
  switch (parts.interaction.name) {
    case 'qti-choice-interaction':
      return choice(parts);
    case 'qti-order-interaction':
      return order(parts);
    case 'qti-text-entry-interaction':
      return number(parts);
    case 'qti-hotspot-interaction':
      return spot(parts);
    case 'qti-extended-text-interaction':
      return words(parts);
    default:
      return refuse('unknown-interaction', parts.interaction);
  }
}

function refuse(refused: Refusal, { name, line }: XmlElement, what = name): ItemRefusal {
  return { refused, what, line };
}

function noKey({ declaration, interaction }: ItemParts): ItemRefusal {
  return refuse('no-key', declaration ?? interaction, 'qti-correct-response');
}

function choice(parts: ItemParts): Read {
  const shuffle = parts.interaction.attributes.shuffle === 'true';
  const several = parts.declaration?.attributes.cardinality === 'multiple';
  const options = optionsOf(parts);
  const right = parts.right().map((id) => parts.idOf(id));
  const [only] = right;
  if (only === undefined) return noKey(parts);
  if (!several && right.length > 1) parts.warn('marking-dropped');
  return several ? { form: 'several', shuffle, options, right } : { form: 'choice', shuffle, options, right: only };
}

function order(parts: ItemParts): Read {
  const options = optionsOf(parts);
  const items = parts.correct().flatMap((id) => options.find((option) => option.id === parts.idOf(id)) ?? []);
  return items.length > 0 && items.length === options.length ? { form: 'order', items } : noKey(parts);
}

function optionsOf(parts: ItemParts) {
  return childrenOf(parts.interaction, 'qti-simple-choice').map((element) => {
    const { identifier = '' } = element.attributes;
    const inside = childrenOf(element, 'qti-feedback-inline');
    const text = parts.line(element.children.filter((child) => typeof child === 'string' || !inside.includes(child)));
    const because = parts.feedbackOn(identifier) ?? parts.line(inside.flatMap(({ children }) => children));
    return { id: parts.idOf(identifier), text: text || '–', ...(because && { because }) };
  });
}

/** Room for a number that is meant exactly, since ours always have a tolerance. */
const EXACT = 1e-9;

function number(parts: ItemParts): Read {
  const { item, interaction, declaration } = parts;
  const base = declaration?.attributes['base-type'];
  if (base !== 'float' && base !== 'integer')
    return refuse('unknown-interaction', declaration ?? interaction, `${interaction.name} ${base ?? ''}`);
  const [template] = childrenOf(item, 'qti-template-processing');
  const read = template && readTemplate(item);
  if (template && !read) return refuse('template', template);
  if (read?.coarse) parts.warn('draws-made-coarse');
  const [key = ''] = parts.right();
  const formula = read?.formula ?? numberOf(key);
  if (formula === undefined) return noKey(parts);
  const decimals = read ? (read.decimals ?? 2) : Math.min(6, key.split('.')[1]?.length ?? 0);
  return { form: 'numbers', variables: read?.variables ?? [], formula, tolerance: toleranceOf(item), decimals };
}

function toleranceOf(item: XmlElement): { kind: 'absolute' | 'percent'; amount: number } {
  const equal = findElement(item, 'qti-equal');
  const amount = Number(equal?.attributes.tolerance?.trim().split(/\s+/)[0]);
  const kind = equal?.attributes['tolerance-mode'] === 'relative' ? 'percent' : 'absolute';
  return Number.isFinite(amount) && amount > 0 ? { kind, amount } : { kind: 'absolute', amount: EXACT };
}

function spot(parts: ItemParts): Read {
  const { interaction } = parts;
  const image = findElement(interaction, 'img') ?? findElement(interaction, 'object') ?? interaction;
  const href = image.attributes.src ?? image.attributes.data ?? '';
  const picture = parts.pictureIn(href);
  if (!picture) return refuse('picture-unusable', image, href);
  const width = Number(image.attributes.width) || picture.width;
  const height = Number(image.attributes.height) || picture.height;
  const areas = childrenOf(interaction, 'qti-hotspot-choice').flatMap((place) => {
    const { shape = 'rect', coords = '', identifier = '', 'hotspot-label': label } = place.attributes;
    const box = boxOf(shape, coords.split(',').map(Number), { width, height });
    if (shape !== 'rect' && shape !== 'default') parts.warn('shape-made-a-box');
    return box ? [{ id: parts.idOf(identifier), name: label || identifier, ...box }] : [];
  });
  const right = parts.right().map((id) => parts.idOf(id));
  if (right.length === 0) return noKey(parts);
  return { form: 'spot', picture: { ...picture, alt: image.attributes.alt || '–' }, areas, right };
}

/** The box around a shape, in shares of the picture. @source HTML image maps, whose shapes the standard takes over, from memory */
function boxOf(shape: string, numbers: readonly number[], { width, height }: { width: number; height: number }) {
  if (shape !== 'default' && !numbers.every(Number.isFinite)) return undefined;
  const corners = cornersOf(shape, numbers, { width, height });
  if (!corners) return undefined;
  const [left, top, right, bottom] = corners;
  const share = (pixels: number, most: number) => Math.min(1, Math.max(0, pixels / most));
  return {
    left: share(left, width),
    top: share(top, height),
    right: share(right, width),
    bottom: share(bottom, height),
  };
}

function cornersOf(
  shape: string,
  numbers: readonly number[],
  { width, height }: { width: number; height: number },
): readonly [number, number, number, number] | undefined {
  const [x = 0, y = 0, a = 0, b = a] = numbers;
  if (shape === 'default') return [0, 0, width, height];
  if (shape === 'rect') return numbers.length === 4 ? [x, y, a, b] : undefined;
  if (shape === 'circle' || shape === 'ellipse') return [x - a, y - b, x + a, y + b];
  if (shape !== 'poly' || numbers.length < 6) return undefined;
  const along = (odd: number) => numbers.filter((_, index) => index % 2 === odd);
  return [Math.min(...along(0)), Math.min(...along(1)), Math.max(...along(0)), Math.max(...along(1))];
}

function words(parts: ItemParts): Read {
  const [model, ...guidance] = [...elementsIn(parts.item)]
    .filter(({ name, attributes }) => name === 'qti-rubric-block' && /\bscorer\b/.test(attributes.view ?? ''))
    .map(({ children }) => parts.markdown(children));
  const length = Math.round(Number(parts.interaction.attributes['expected-length']));
  const most = Math.min(MOST_CHARACTERS, Math.max(50, length || 1000));
  const points = Number(findOutcome(parts.item, 'SCORE')?.attributes['normal-maximum']);
  const steps = Number.isInteger(points) && points >= 1 && points <= 10 ? points : 1;
  return { form: 'words', most, model: model || '–', guidance: guidance.join('\n\n'), steps };
}

function findOutcome(item: XmlElement, identifier: string): XmlElement | undefined {
  return childrenOf(item, 'qti-outcome-declaration').find(({ attributes }) => attributes.identifier === identifier);
}
