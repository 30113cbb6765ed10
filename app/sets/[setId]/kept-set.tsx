import ui from '@/app/_ui/ui.module.css';
import type { Draft } from '../editor/draft';
import { itemInWords } from '../editor/item-in-words';
import type { SetChoices, SetWords } from '../editor/set-words';
import styles from '../sets.module.css';

/** A version that is not being changed: what it consists of. */
export function KeptSet({
  draft: { note, items },
  holding,
  words,
  choices,
}: {
  draft: Draft;
  holding: React.ReactNode;
  words: SetWords;
  choices: SetChoices;
}) {
  return (
    <div className={styles.beside}>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="items">
        <h2 id="items">{words.items}</h2>
        {note && <p className={styles.note}>{note}</p>}
        <ol className={styles.items}>
          {items.map((item, index) => (
            <li key={item.id} className={styles.item}>
              <p>
                <b className={ui.code}>{index + 1}</b> {itemInWords(item, words, choices)}
              </p>
            </li>
          ))}
        </ol>
      </section>
      <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="holding">
        <h2 id="holding">{words.holding}</h2>
        {holding}
      </section>
    </div>
  );
}
