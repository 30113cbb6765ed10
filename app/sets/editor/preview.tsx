'use client';

import { useHydrated } from '@/app/_ui/hydrated';
import { Reveal } from '@/app/_ui/reveal';
import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import { PreviewBoundary } from '@/app/questions/editor/preview-boundary';
import styles from '../sets.module.css';
import type { DraftItem } from './draft';
import type { SetWords } from './set-words';

/** An item of which an example is shown. */
export interface Previewed {
  item: DraftItem;
  seed: number;
  answers: boolean;
  shown: React.ReactNode;
  /** Rises with every answer. */
  count: number;
  /** Rises whenever an item's example is asked for at the item. */
  opened: number;
}

/** An example of one task, as a learner sees it or with its answer. */
export function Preview({
  previewed,
  items,
  words,
  failed,
  pending,
  onShow,
}: {
  previewed: Previewed | undefined;
  items: readonly DraftItem[];
  words: SetWords;
  failed: string;
  pending: boolean;
  onShow: (item: DraftItem, asked: { seed: number; answers: boolean }) => void;
}) {
  const hydrated = useHydrated();
  const place = items.findIndex(({ id }) => id === previewed?.item.id);
  // As it stands now, not as it was when the example was drawn.
  const item = items[place];
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="preview" aria-busy={pending}>
      <h2 id="preview" tabIndex={-1}>
        {item ? withValues(words.previewOf, { n: place + 1 }) : words.previewTitle}
      </h2>
      <Reveal target="preview" when={String(previewed?.opened ?? 0)} />
      {previewed && item && (
        <div className={styles.buttons}>
          <button
            type="button"
            disabled={!hydrated}
            aria-disabled={pending}
            onClick={() => onShow(item, { ...previewed, seed: previewed.seed + 1 })}
          >
            {words.again}
          </button>
          <button
            type="button"
            disabled={!hydrated}
            aria-disabled={pending}
            onClick={() => onShow(item, { ...previewed, answers: !previewed.answers })}
          >
            {previewed.answers ? words.asLearner : words.withAnswer}
          </button>
        </div>
      )}
      {/* What is chosen here goes nowhere. */}
      <form key={previewed?.count} onSubmit={(event) => event.preventDefault()}>
        <PreviewBoundary failed={<p className={ui.alert}>{failed}</p>}>
          {(item && previewed?.shown) ?? <p className={ui.small}>{pending ? words.drawing : words.previewNone}</p>}
        </PreviewBoundary>
      </form>
    </section>
  );
}
