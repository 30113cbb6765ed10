import { micromark } from 'micromark';
import { Xml, xml, xmlSigns } from './xml';

/** Tags are text like any other. */
const NO_HTML = { disable: { null: ['htmlFlow', 'htmlText'] } };

/** Where a link of ours may lead. */
export const SAFE_ADDRESS = /^(?:https?:\/\/|mailto:)/i;

/** Numbers drawn, by name, and how each is printed; see `printed`. */
export type Printed = ReadonlyMap<string, { identifier: string; decimals: number }>;

/**
 * Markdown as XHTML that an item may hold. HTML in it stays text, links lead to the web or to mail or nowhere, pictures
 * leave their words.
 *
 * @param printed  Names in braces that stand for a number drawn.
 */
export function xhtmlOf(markdown: string, printed: Printed = new Map()): Xml {
  const html = micromark(xmlSigns(markdown), { extensions: [NO_HTML] })
    .replace(/<img [^>]*?alt="([^"]*)"[^>]*>/g, '$1')
    .replace(/<a href="([^"]*)"[^>]*>/g, (_, address: string) =>
      SAFE_ADDRESS.test(address) ? `<a href="${address}">` : '<a>',
    );
  return new Xml(
    html.replace(/<a>([\s\S]*?)<\/a>/g, '$1').replace(PLACEHOLDER, (whole, name?: string) => {
      const number = name === undefined ? undefined : printed.get(name);
      return number ? printedXml(number).text : whole;
    }),
  );
}

/** The same for a text of one line, without the paragraph around it. */
export function inlineXhtmlOf(markdown: string): Xml {
  return new Xml(xhtmlOf(markdown).text.replace(/^<p>((?:(?!<p>)[\s\S])*)<\/p>\s*$/, '$1'));
}

/** A tag as a whole, so that nothing in it is taken, or a name in braces. */
const PLACEHOLDER = /<[^>]*>|\{([a-z][a-z0-9_]*)\}/gi;

function printedXml({ identifier, decimals }: { identifier: string; decimals: number }): Xml {
  return xml`<qti-printed-variable identifier="${identifier}" format="%.${decimals}f"/>`;
}
