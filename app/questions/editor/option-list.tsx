'use client';

import { useId } from 'react';
import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import { type DraftOf, type DraftOption, emptyOption, freeId } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { FaultText, Typed } from './fields';
import { changedAt, movedBy, RowButtons } from './row-buttons';

const MOST_OPTIONS = 12;

type Choice = DraftOf<'choice' | 'several'>;

/** Options to choose among, with what is right marked at each. */
export function ChoiceEditor({ body, onChange }: { body: Choice; onChange: (body: Choice) => void }) {
  const { words } = useEditor();
  const group = useId();
  const isOne = body.form === 'choice';
  const mark = (id: string, right: boolean) => {
    const others = isOne ? [] : body.right.filter((one) => one !== id);
    onChange({ ...body, right: right ? [...others, id] : others });
  };
  return (
    <fieldset className={ui.stack} aria-describedby={`${group}-rule`}>
      <legend className={styles.legend}>{words.options}</legend>
      <p id={`${group}-rule`} className={ui.small}>
        {isOne ? words.optionsOne : words.optionsAll}
      </p>
      <FaultText at="body.right" />
      <FaultText at="body.options" />
      <OptionRows
        path="body.options"
        label={words.option}
        add={words.addOption}
        options={body.options}
        onChange={(options) =>
          onChange({ ...body, options, right: body.right.filter((id) => options.some((one) => one.id === id)) })
        }
      >
        {({ id }, index) => (
          <label className={styles.tick}>
            <input
              type={isOne ? 'radio' : 'checkbox'}
              name={group}
              checked={body.right.includes(id)}
              aria-label={withValues(words.isRight, { n: index + 1 })}
              onChange={(event) => mark(id, event.currentTarget.checked)}
            />
            {words.right}
          </label>
        )}
      </OptionRows>
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={body.shuffle}
          onChange={(event) => onChange({ ...body, shuffle: event.currentTarget.checked })}
        />
        {words.shuffle}
      </label>
    </fieldset>
  );
}

type Order = DraftOf<'order'>;

/** Items in the order in which they belong. */
export function OrderEditor({ body, onChange }: { body: Order; onChange: (body: Order) => void }) {
  const { words } = useEditor();
  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{words.items}</legend>
      <p className={ui.small}>{words.itemsRule}</p>
      <FaultText at="body.items" />
      <OptionRows
        path="body.items"
        label={words.item}
        add={words.addItem}
        options={body.items}
        onChange={(items) => onChange({ ...body, items })}
      />
    </fieldset>
  );
}

function OptionRows({
  path,
  label,
  add,
  options,
  onChange,
  children,
}: {
  path: string;
  label: string;
  add: string;
  options: readonly DraftOption[];
  onChange: (options: DraftOption[]) => void;
  /** What marks an option as right; none where all are. */
  children?: (option: DraftOption, index: number) => React.ReactNode;
}) {
  const { words } = useEditor();
  const base = useId();
  const change = (index: number, changes: Partial<DraftOption>) => onChange(changedAt(options, index, changes));
  return (
    <>
      <ol className={styles.rows}>
        {options.map((option, index) => {
          const name = withValues(label, { n: index + 1 });
          return (
            <li key={option.id} className={styles.row}>
              {children?.(option, index)}
              <Typed
                label={name}
                at={`${path}.${index}.text`}
                value={option.text}
                most={500}
                onChange={(text) => change(index, { text })}
              />
              {children && (
                <Typed
                  label={words.because}
                  at={`${path}.${index}.because`}
                  value={option.because}
                  most={1000}
                  onChange={(because) => change(index, { because })}
                />
              )}
              <RowButtons
                id={`${base}-${option.id}`}
                label={name}
                index={index}
                count={options.length}
                least={2}
                onMove={(by) => onChange(movedBy(options, index, by))}
                onRemove={() => onChange(options.filter((_, at) => at !== index))}
              />
            </li>
          );
        })}
      </ol>
      <button
        type="button"
        disabled={options.length >= MOST_OPTIONS}
        onClick={() => onChange([...options, emptyOption(freeId(options))])}
      >
        {add}
      </button>
    </>
  );
}
