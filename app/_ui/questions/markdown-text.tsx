import Markdown, { type Components, type Options } from 'react-markdown';
import styles from './words.module.css';

/** Headings of a text stand below those of the page. */
const HEADINGS: Components = { h1: 'h3', h2: 'h4', h3: 'h5', h4: 'h6', h5: 'h6' };
const SAFE_ADDRESS = /^(?:https?:\/\/|mailto:)/i;

const common: Options = {
  skipHtml: true,
  // What a page shows comes from this installation alone; a picture that was uploaded has a place of its own.
  disallowedElements: ['img'],
  urlTransform: (address) => (SAFE_ADDRESS.test(address) ? address : ''),
  components: {
    ...HEADINGS,
    a: ({ href, children }) =>
      href ? (
        <a href={href} rel="noopener noreferrer nofollow">
          {children}
        </a>
      ) : (
        children
      ),
  },
};

/** Paragraphs that somebody wrote in Markdown. HTML in them is dropped; links lead to the web or to mail, or nowhere. */
export function MarkdownText({ markdown }: { markdown: string }) {
  return (
    <div className={styles.markdown}>
      <Markdown {...common}>{markdown}</Markdown>
    </div>
  );
}

/** What may stand within a line that can itself be pressed. */
const INLINE = ['em', 'strong', 'code', 'del', 'br'];

/** One line of Markdown, such as an option: no blocks, no links. */
export function MarkdownLine({ markdown }: { markdown: string }) {
  const { disallowedElements: _, ...rest } = common;
  return (
    <Markdown {...rest} allowedElements={INLINE} unwrapDisallowed>
      {markdown}
    </Markdown>
  );
}
