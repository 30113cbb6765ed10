'use client';

import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import type { Draft, DraftBody } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { Chosen, FaultText, Typed, TypedLong } from './fields';
import { NumberEditor } from './number-editor';
import { ChoiceEditor, OrderEditor } from './option-list';
import { PictureField } from './picture-field';
import { PointEditor, type RigParts } from './point-editor';
import { SpotEditor } from './spot-editor';
import { WordsEditor } from './words-editor';

export interface Named {
  id: string;
  name: string;
}

/** All fields of a draft, in the order in which one thinks of a question. */
export function DraftFields({
  draft,
  onChange,
  topics,
  rigs,
}: {
  draft: Draft;
  onChange: (draft: Draft) => void;
  topics: readonly Named[];
  rigs: readonly RigParts[];
}) {
  const { words } = useEditor();
  const { body } = draft;
  const change = (changes: Partial<Draft>) => onChange({ ...draft, ...changes });
  const isNumbers = body.form === 'numbers';
  return (
    <>
      <Typed
        label={words.title}
        at="title"
        value={draft.title}
        most={500}
        rule={words.titleRule}
        onChange={(title) => change({ title })}
      />
      <TypedLong
        label={words.stem}
        at="stem"
        rows={5}
        value={draft.stem}
        rule={isNumbers ? `${words.stemRule} ${withValues(words.stemNumbers, { x: '{x}' })}` : words.stemRule}
        onChange={(stem) => change({ stem })}
      />
      <PictureField
        label={words.picture}
        at="picture"
        picture={draft.picture}
        onChange={(picture) => change({ picture })}
      />
      <BodyFields body={body} rigs={rigs} onChange={(next) => change({ body: next })} />
      <TypedLong
        label={words.explanation}
        at="explanation"
        rows={5}
        value={draft.explanation}
        rule={
          isNumbers
            ? `${words.explanationRule} ${withValues(words.explanationNumbers, { answer: '{answer}' })}`
            : words.explanationRule
        }
        onChange={(explanation) => change({ explanation })}
      />
      <Topics all={topics} chosen={draft.topics} onChange={(chosen) => change({ topics: chosen })} />
      <div className={styles.pair}>
        <Chosen
          label={words.difficulty}
          at="difficulty"
          value={draft.difficulty}
          options={difficultiesWith(draft.difficulty, words.difficulties)}
          onChange={(difficulty) => change({ difficulty })}
        />
        <Typed
          label={words.seconds}
          at="seconds"
          numeric
          value={draft.seconds}
          most={5}
          onChange={(seconds) => change({ seconds })}
        />
      </div>
    </>
  );
}

function BodyFields({
  body,
  rigs,
  onChange,
}: {
  body: DraftBody;
  rigs: readonly RigParts[];
  onChange: (body: DraftBody) => void;
}) {
  switch (body.form) {
    case 'choice':
    case 'several':
      return <ChoiceEditor body={body} onChange={onChange} />;
    case 'numbers':
      return <NumberEditor body={body} onChange={onChange} />;
    case 'order':
      return <OrderEditor body={body} onChange={onChange} />;
    case 'point':
      return <PointEditor body={body} rigs={rigs} onChange={onChange} />;
    case 'spot':
      return <SpotEditor body={body} onChange={onChange} />;
    case 'words':
      return <WordsEditor body={body} onChange={onChange} />;
  }
}

/** Five steps, and what came in from elsewhere as it is. */
function difficultiesWith(value: string, names: Readonly<Record<string, string>>) {
  const steps = ['-2', '-1', '0', '1', '2'];
  return (steps.includes(value) ? steps : [...steps, value]).map((one) => ({ value: one, label: names[one] ?? one }));
}

function Topics({
  all,
  chosen,
  onChange,
}: {
  all: readonly Named[];
  chosen: readonly string[];
  onChange: (chosen: string[]) => void;
}) {
  const { words } = useEditor();
  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{words.topics}</legend>
      <FaultText at="topics" />
      <div className={styles.parts}>
        {all.map(({ id, name }) => (
          <label key={id} className={styles.tick}>
            <input
              type="checkbox"
              checked={chosen.includes(id)}
              onChange={(event) =>
                onChange(event.currentTarget.checked ? [...chosen, id] : chosen.filter((one) => one !== id))
              }
            />
            {name}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
