import { lineOf, markdownOf, type ReadMarkdown } from './read-xhtml';
import { childrenOf, elementsIn, findElement, textOf, type XmlElement, type XmlNode } from './read-xml';
import type { Warning } from './terms';

/** A picture of the package that an item shows; undefined where it has none there. */
export type PictureIn = (href: string) => { id: string; width: number; height: number } | undefined;

/** What one looks for in an item, and what is to be said of what was found. */
export class ItemParts {
  readonly warnings = new Set<Warning>();
  readonly declaration: XmlElement | undefined;
  readonly #ids: ReadonlyMap<string, string>;

  constructor(
    readonly item: XmlElement,
    readonly interaction: XmlElement,
    readonly pictureIn: PictureIn,
  ) {
    const response = interaction.attributes['response-identifier'];
    this.declaration = childrenOf(item, 'qti-response-declaration').find(
      ({ attributes }) => attributes.identifier === response,
    );
    const offered = [...elementsIn(interaction)].filter(({ name }) => /^qti-(simple|hotspot)-choice$/.test(name));
    this.#ids = idsFor(offered.map(({ attributes }) => attributes.identifier ?? ''));
  }

  warn(warning: Warning): void {
    this.warnings.add(warning);
  }

  markdown(nodes: readonly XmlNode[]): string {
    return this.#taken(markdownOf(nodes));
  }

  line(nodes: readonly XmlNode[]): string {
    return this.#taken(lineOf(nodes));
  }

  #taken({ markdown, dropped }: ReadMarkdown): string {
    if (dropped) this.warn('markup-dropped');
    return markdown;
  }

  /** The id of ours that an identifier becomes; itself where nothing of that name is offered. */
  idOf(identifier: string): string {
    return this.#ids.get(identifier) ?? identifier;
  }

  /** Identifiers that are right: those named so, or else those that are worth something. */
  right(): string[] {
    const named = this.correct();
    const worth = this.entries().filter(({ attributes }) => Number(attributes['mapped-value']) > 0);
    const mapped = worth.map(({ attributes }) => attributes['map-key'] ?? '');
    const any = this.interaction.name === 'qti-hotspot-interaction' || named.length === 0;
    return any && mapped.length > 0 ? mapped : named;
  }

  correct(): string[] {
    const correct = this.declaration && findElement(this.declaration, 'qti-correct-response');
    return correct ? childrenOf(correct, 'qti-value').map((value) => textOf(value).trim()) : [];
  }

  entries(): XmlElement[] {
    const mapping = this.declaration && findElement(this.declaration, 'qti-mapping');
    return mapping ? childrenOf(mapping, 'qti-map-entry') : [];
  }

  /** What is said to whoever chose an option. */
  feedbackOn(identifier: string): string | undefined {
    const said = childrenOf(this.item, 'qti-modal-feedback').find(
      (feedback) => isShown(feedback) && feedback.attributes.identifier === identifier && this.#ids.has(identifier),
    );
    return said && this.line(said.children);
  }

  /** Feedback that belongs to no option. */
  otherFeedback(): XmlElement[] {
    return childrenOf(this.item, 'qti-modal-feedback').filter(
      ({ attributes }) => !this.#ids.has(attributes.identifier ?? ''),
    );
  }
}

function isShown({ attributes }: XmlElement): boolean {
  return attributes['show-hide'] !== 'hide';
}

/** Ids of ours are small letters, digits and hyphens, twenty at most, each once. */
function idsFor(identifiers: readonly string[]): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  for (const identifier of new Set(identifiers)) {
    const slug = identifier
      .replace(/^_(?=[0-9-])/, '')
      .toLowerCase()
      .replace(/[^a-z0-9-]/g, '-')
      .slice(0, 20);
    const taken = slug === '' || [...ids.values()].includes(slug);
    ids.set(identifier, taken ? `option-${ids.size + 1}` : slug);
  }
  return ids;
}
