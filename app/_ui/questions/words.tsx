import type { Said } from '@/app/_server/questions/say';
import { MarkdownLine, MarkdownText } from './markdown-text';
import styles from './words.module.css';

/** Paragraphs, each said in plain words or in Markdown. */
export function Paragraphs({ of, lead = false }: { of: readonly Said[]; lead?: boolean }) {
  return (
    <div className={`${styles.paragraphs} ${lead ? styles.lead : ''}`}>
      {of.map((said, index) =>
        'text' in said ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: paragraphs are never reordered, and two may say the same
          <p key={index}>{said.text}</p>
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <MarkdownText key={index} markdown={said.markdown} />
        ),
      )}
    </div>
  );
}

/** Words within a line. */
export function InLine({ said }: { said: Said }) {
  return 'text' in said ? said.text : <MarkdownLine markdown={said.markdown} />;
}
