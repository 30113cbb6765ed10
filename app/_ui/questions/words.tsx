import type { Said } from '@/app/_server/questions/say';
import { MarkdownLine, MarkdownText } from './markdown-text';
import styles from './words.module.css';

/**
 * Paragraphs, each said in plain words or in Markdown.
 *
 * @param level  Of the headings that a text may bring along.
 */
export function Paragraphs({ of, lead = false, level = 3 }: { of: readonly Said[]; lead?: boolean; level?: number }) {
  return (
    <div className={`${styles.paragraphs} ${lead ? styles.lead : ''}`}>
      {of.map((said, index) =>
        'text' in said ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: paragraphs are never reordered, and two may say the same
          <p key={index}>{said.text}</p>
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <MarkdownText key={index} markdown={said.markdown} level={level} />
        ),
      )}
    </div>
  );
}

/** Words within a line. */
export function InLine({ said }: { said: Said }) {
  return 'text' in said ? said.text : <MarkdownLine markdown={said.markdown} />;
}
