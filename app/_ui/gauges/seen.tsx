import styles from './gauges.module.css';

/** What an eye sees, in words; there is no instrument to draw. */
export function Seen({ text }: { text: string }) {
  return <p className={styles.seen}>{text}</p>;
}
