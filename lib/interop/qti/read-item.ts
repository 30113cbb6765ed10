import type { WrittenBody, WrittenQuestion } from '../../questions/written/written-question';
import { markdownOf } from './markdown';
import { childrenOf, elementsIn, findElement, textOf, type XmlElement, type XmlNode } from './read-xml';
import type { Refusal, Warning } from './terms';

/** What is known of an item's picture in the package; undefined where the package has none there. */
export type PictureIn = (href: string) => { id: string; width: number; height: number } | undefined;

export interface ReadItem {
  /** As the standard's own elements say it; whether it is a valid question is for the schema to say. */
  question: WrittenQuestion;
  warnings: Warning[];
}

export type ItemRefusal = { refused: Refusal; what: string };

/** What an item of somebody else's lacks. Assumed; whoever takes it over puts it right. */
const USUAL = { difficulty: 0, seconds: 60 };

const INTERACTION = /^qti-.*-interaction$/;

/**
 * An assessment item as a written question.
 *
 * @param topic  Given to it: the standard has no place for ours.
 */
export function readItem(item: XmlElement, pictureIn: PictureIn, topic: string): ReadItem | ItemRefusal {
  if (item.name !== 'qti-assessment-item') return { refused: 'not-qti-3', what: item.name };
  const body = findElement(item, 'qti-item-body');
  if (!body) return { refused: 'no-key', what: 'qti-item-body' };
  const interactions = [...elementsIn(body)].filter(({ name }) => INTERACTION.test(name));
  const [interaction] = interactions;
  if (!interaction) return { refused: 'unknown-interaction', what: 'none' };
  if (interactions.length > 1)
    return { refused: 'several-interactions', what: interactions.map(({ name }) => name).join(', ') };
  const reading = new Reading(item, interaction, pictureIn);
  const read = reading.body();
  if ('refused' in read) return read;
  const stem = reading.markdown(withoutInteraction(body, interaction));
  const explanation = reading.explanation();
  const picture = read.form === 'spot' ? undefined : reading.picture(body);
  const question: WrittenQuestion = {
    title: item.attributes.title || 'Question',
    stem: stem || 'Question',
    topics: [topic],
    ...USUAL,
    explanation: explanation || '–',
    ...(picture && { picture }),
    body: read,
  };
  return { question, warnings: [...new Set(reading.warnings)] };
}

/** The body's content but for what is answered; the prompt inside that belongs to the stem. */
function withoutInteraction({ children }: XmlElement, interaction: XmlElement): XmlNode[] {
  const prompt = childrenOf(interaction, 'qti-prompt');
  return children.flatMap((child): XmlNode[] => {
    if (child === interaction) return prompt;
    if (typeof child === 'string' || child.name === 'qti-rubric-block') return typeof child === 'string' ? [child] : [];
    return [{ ...child, children: withoutInteraction(child, interaction) }];
  });
}

class Reading {
  readonly warnings: Warning[] = ['topic-assumed'];

  constructor(
    readonly item: XmlElement,
    readonly interaction: XmlElement,
    readonly pictureIn: PictureIn,
  ) {}

  body(): WrittenBody | ItemRefusal {
    switch (this.interaction.name) {
      case 'qti-choice-interaction':
        return this.choice();
      case 'qti-order-interaction':
        return this.order();
      case 'qti-text-entry-interaction':
        return this.number();
      case 'qti-hotspot-interaction':
        return this.spot();
      case 'qti-extended-text-interaction':
        return this.words();
      default:
        return { refused: 'unknown-interaction', what: this.interaction.name };
    }
  }

  markdown(nodes: readonly XmlNode[]): string {
    const { markdown, dropped } = markdownOf(nodes);
    if (dropped) this.warnings.push('markup-dropped');
    return markdown;
  }

  explanation(): string {
    const [feedback] = childrenOf(this.item, 'qti-modal-feedback');
    if (!feedback) {
      this.warnings.push('explanation-missing');
      return '';
    }
    return this.markdown(feedback.children);
  }

  picture(body: XmlElement): WrittenQuestion['picture'] {
    const image = findElement(body, 'img');
    const found = image && this.pictureIn(image.attributes.src ?? '');
    if (!image) return undefined;
    if (!found) this.warnings.push('picture-missing');
    return found && { ...found, alt: image.attributes.alt || '–' };
  }

  private choice(): WrittenBody | ItemRefusal {
    const options = this.options();
    const right = this.correct();
    if (right.length === 0) return { refused: 'no-key', what: 'qti-correct-response' };
    const shuffle = this.interaction.attributes.shuffle === 'true';
    const [only = ''] = right;
    if (this.declaration()?.attributes.cardinality !== 'multiple') {
      if (this.entries().length > 0) this.warnings.push('partial-marks-dropped');
      return { form: 'choice', shuffle, options, right: only };
    }
    return { form: 'several', shuffle, options, right };
  }

  private order(): WrittenBody | ItemRefusal {
    const options = this.options();
    const items = this.correct().flatMap((id) => options.find((option) => option.id === id) ?? []);
    if (items.length === 0 || items.length !== options.length)
      return { refused: 'no-key', what: 'qti-correct-response' };
    return { form: 'order', items };
  }

  private number(): WrittenBody | ItemRefusal {
    const [key] = this.correct();
    const value = Number(key);
    const base = this.declaration()?.attributes['base-type'];
    if (key === undefined || !Number.isFinite(value) || (base !== 'float' && base !== 'integer'))
      return { refused: 'no-key', what: `qti-text-entry-interaction ${base ?? ''}` };
    if (findElement(this.item, 'qti-template-processing')) this.warnings.push('numbers-not-drawn');
    const equal = findElement(this.item, 'qti-equal');
    const amount = Number(equal?.attributes.tolerance?.split(' ')[0]);
    const kind = equal?.attributes['tolerance-mode'] === 'relative' ? 'percent' : 'absolute';
    const tolerance = Number.isFinite(amount) && amount > 0 ? { kind, amount } : { kind: 'absolute', amount: 1e-9 };
    const decimals = Math.min(6, key.split('.')[1]?.length ?? 0);
    return { form: 'numbers', variables: [], formula: String(value), tolerance, decimals } as WrittenBody;
  }

  private spot(): WrittenBody | ItemRefusal {
    const image = findElement(this.interaction, 'img') ?? findElement(this.interaction, 'object');
    const href = image?.attributes.src ?? image?.attributes.data ?? '';
    const picture = this.pictureIn(href);
    if (!picture) return { refused: 'file-missing', what: href };
    const areas = childrenOf(this.interaction, 'qti-hotspot-choice').flatMap((choice) =>
      this.area(choice, image, picture),
    );
    const mapped = this.entries().filter(({ attributes }) => Number(attributes['mapped-value']) > 0);
    const right = mapped.length > 0 ? mapped.map(({ attributes }) => idOf(attributes['map-key'])) : this.correct();
    if (right.length === 0) return { refused: 'no-key', what: 'qti-correct-response' };
    return { form: 'spot', picture: { ...picture, alt: image?.attributes.alt || '–' }, areas, right };
  }

  private area(choice: XmlElement, image: XmlElement | undefined, picture: { width: number; height: number }) {
    const { shape = 'rect', coords = '', identifier, 'hotspot-label': label } = choice.attributes;
    const numbers = coords.split(',').map(Number);
    const box = boxOf(shape, numbers);
    if (!box) return [];
    if (shape !== 'rect') this.warnings.push('shape-made-a-box');
    const width = Number(image?.attributes.width) || picture.width;
    const height = Number(image?.attributes.height) || picture.height;
    const [left = 0, top = 0, right = 1, bottom = 1] = box;
    const id = idOf(identifier);
    return [
      {
        id,
        name: label || id,
        ...{ left: left / width, top: top / height, right: right / width, bottom: bottom / height },
      },
    ];
  }

  private words(): WrittenBody {
    const rubric = findElement(this.item, 'qti-rubric-block');
    const length = Number(this.interaction.attributes['expected-length']);
    const most = Math.min(4000, Math.max(50, Number.isFinite(length) ? Math.round(length) : 1000));
    return { form: 'words', most, model: (rubric && this.markdown(rubric.children)) || '–', guidance: '', steps: 1 };
  }

  private options() {
    return childrenOf(this.interaction, 'qti-simple-choice').map((choice) => {
      const feedback = findElement(choice, 'qti-feedback-inline');
      const text = this.markdown(choice.children.filter((child) => child !== feedback));
      const because = feedback && textOf(feedback).trim();
      return { id: idOf(choice.attributes.identifier), text: text || '–', ...(because && { because }) };
    });
  }

  private declaration(): XmlElement | undefined {
    const id = this.interaction.attributes['response-identifier'];
    return childrenOf(this.item, 'qti-response-declaration').find(({ attributes }) => attributes.identifier === id);
  }

  private correct(): string[] {
    const declaration = this.declaration();
    const correct = declaration && findElement(declaration, 'qti-correct-response');
    return correct ? childrenOf(correct, 'qti-value').map((value) => idOf(textOf(value).trim())) : [];
  }

  private entries(): XmlElement[] {
    const declaration = this.declaration();
    const mapping = declaration && findElement(declaration, 'qti-mapping');
    return mapping ? childrenOf(mapping, 'qti-map-entry') : [];
  }
}

/** Ids of ours are small letters, digits and hyphens; numbers stay as they are. */
function idOf(identifier = ''): string {
  if (/^-?\d+(\.\d+)?$/.test(identifier)) return identifier;
  return identifier
    .replace(/^_(?=[0-9-])/, '')
    .toLowerCase()
    .replace(/[^a-z0-9-]/g, '-')
    .slice(0, 20);
}

/** The box around a shape, in the picture's own pixels. @source HTML image maps, whose shapes the standard takes over */
function boxOf(shape: string, numbers: readonly number[]): readonly number[] | undefined {
  if (!numbers.every(Number.isFinite)) return undefined;
  if (shape === 'rect' && numbers.length === 4) return numbers;
  const [x = 0, y = 0, a = 0, b = a] = numbers;
  if (shape === 'circle' || shape === 'ellipse') return [x - a, y - b, x + a, y + b];
  if (shape !== 'poly' || numbers.length < 6) return undefined;
  const [xs, ys] = [0, 1].map((odd) => numbers.filter((_, index) => index % 2 === odd)) as [number[], number[]];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
