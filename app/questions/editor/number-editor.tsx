'use client';

import { useId } from 'react';
import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import { unitNames } from '@/lib/units';
import type { DraftOf, DraftVariable } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { Chosen, FaultText, Typed } from './fields';
import { changedAt, RowButtons } from './row-buttons';

const MOST_VARIABLES = 12;

type Numbers = DraftOf<'numbers'>;

/** Numbers that are drawn, and what is to be made of them. */
export function NumberEditor({ body, onChange }: { body: Numbers; onChange: (body: Numbers) => void }) {
  const { words } = useEditor();
  const change = (changes: Partial<Numbers>) => onChange({ ...body, ...changes });
  return (
    <>
      <Variables variables={body.variables} onChange={(variables) => change({ variables })} />
      <Typed
        label={words.formula}
        at="body.formula"
        code
        value={body.formula}
        most={500}
        rule={words.formulaRule}
        onChange={(formula) => change({ formula })}
      />
      <div className={styles.pair}>
        <Chosen
          label={words.unit}
          at="body.unit"
          value={body.unit}
          options={[{ value: '', label: words.unitNone }, ...units]}
          onChange={(unit) => change({ unit })}
        />
        <Chosen
          label={words.decimals}
          at="body.decimals"
          value={body.decimals}
          options={['0', '1', '2', '3', '4', '5', '6'].map((value) => ({ value, label: value }))}
          onChange={(decimals) => change({ decimals })}
        />
      </div>
      <div className={styles.pair}>
        <Typed
          label={words.tolerance}
          at="body.tolerance.amount"
          numeric
          value={body.tolerance.amount}
          most={20}
          onChange={(amount) => change({ tolerance: { ...body.tolerance, amount } })}
        />
        <Chosen
          label={words.toleranceKind}
          at="body.tolerance.kind"
          value={body.tolerance.kind}
          options={(['absolute', 'percent'] as const).map((value) => ({ value, label: words[value] }))}
          onChange={(kind) =>
            change({ tolerance: { ...body.tolerance, kind: kind === 'percent' ? 'percent' : 'absolute' } })
          }
        />
      </div>
    </>
  );
}

/** What a number may be given in; without what only the inside of the program counts in. */
const units = unitNames
  .filter((unit) => !['1', 'count', 'grade', 'm³/s'].includes(unit))
  .map((unit) => ({ value: unit, label: unit }));

function Variables({
  variables,
  onChange,
}: {
  variables: readonly DraftVariable[];
  onChange: (variables: DraftVariable[]) => void;
}) {
  const { words } = useEditor();
  const base = useId();
  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{words.variables}</legend>
      <p className={ui.small}>{words.variablesRule}</p>
      <FaultText at="body.variables" />
      <ol className={styles.rows}>
        {variables.map((variable, index) => {
          const label = withValues(words.variable, { n: index + 1 });
          const at = `body.variables.${index}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a variable has no id but its name, which is being typed
            <li key={index} className={styles.row}>
              <fieldset className={styles.four} aria-label={label}>
                {(['name', 'from', 'to', 'step'] as const).map((field) => (
                  <Typed
                    key={field}
                    label={words[field]}
                    at={`${at}.${field}`}
                    code={field === 'name'}
                    numeric={field !== 'name'}
                    value={variable[field]}
                    most={20}
                    onChange={(value) => onChange(changedAt(variables, index, { [field]: value }))}
                  />
                ))}
              </fieldset>
              <FaultText at={at} />
              <FaultText at={`${at}.id`} />
              <RowButtons
                id={`${base}-${index}`}
                label={label}
                index={index}
                count={variables.length}
                least={0}
                onRemove={() => onChange(variables.filter((_, other) => other !== index))}
              />
            </li>
          );
        })}
      </ol>
      <button
        type="button"
        disabled={variables.length >= MOST_VARIABLES}
        onClick={() => onChange([...variables, { name: '', from: '', to: '', step: '1' }])}
      >
        {words.addVariable}
      </button>
    </fieldset>
  );
}
