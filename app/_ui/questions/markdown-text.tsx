import Markdown, { type Options } from 'react-markdown';
import { shiftHeadings } from './shift-headings';
import styles from './words.module.css';

const SAFE_ADDRESS = /^(?:https?:\/\/|mailto:)/i;

const common: Options = {
  skipHtml: true,
  // What a page shows comes from this installation alone; a picture that was uploaded has a place of its own.
  disallowedElements: ['img'],
  urlTransform: (address) => (SAFE_ADDRESS.test(address) ? address : ''),
  components: {
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

/**
 * Paragraphs that somebody wrote in Markdown. HTML in them is dropped; links lead to the web or to mail, or nowhere.
 *
 * @param level  Of the highest heading.
 */
export function MarkdownText({ markdown, level }: { markdown: string; level: number }) {
  return (
    <div className={styles.markdown}>
      <Markdown {...common} rehypePlugins={[[shiftHeadings, level]]}>
        {markdown}
      </Markdown>
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
