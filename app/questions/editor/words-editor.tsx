'use client';

import type { DraftOf } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { Chosen, Typed, TypedLong } from './fields';

type Words = DraftOf<'words'>;

/** Free text, with what helps whoever marks it. */
export function WordsEditor({ body, onChange }: { body: Words; onChange: (body: Words) => void }) {
  const { words } = useEditor();
  const change = (changes: Partial<Words>) => onChange({ ...body, ...changes });
  return (
    <>
      <TypedLong
        label={words.model}
        at="body.model"
        value={body.model}
        rule={words.modelRule}
        onChange={(model) => change({ model })}
      />
      <TypedLong
        label={words.guidance}
        at="body.guidance"
        value={body.guidance}
        rule={words.guidanceRule}
        onChange={(guidance) => change({ guidance })}
      />
      <div className={styles.pair}>
        <Chosen
          label={words.steps}
          at="body.steps"
          value={body.steps}
          options={Array.from({ length: 10 }, (_, n) => ({ value: String(n + 1), label: String(n + 1) }))}
          onChange={(steps) => change({ steps })}
        />
        <Typed
          label={words.most}
          at="body.most"
          numeric
          value={body.most}
          most={5}
          onChange={(most) => change({ most })}
        />
      </div>
    </>
  );
}
