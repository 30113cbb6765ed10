'use client';

import { useId } from 'react';
import ui from '@/app/_ui/ui.module.css';
import styles from './editor.module.css';
import { useEditor } from './editor-context';

interface Common {
  label: string;
  /** Path of the field, by which its fault is found. */
  at: string;
  value: string;
  onChange: (value: string) => void;
  rule?: string;
}

/** A line to type in. */
export function Typed({
  numeric = false,
  code = false,
  most,
  ...common
}: Common & { numeric?: boolean; code?: boolean; most?: number }) {
  const { value, onChange } = common;
  return (
    <Labelled {...common}>
      {(described) => (
        <input
          {...described}
          className={numeric || code ? ui.code : undefined}
          value={value}
          maxLength={most}
          inputMode={numeric ? 'decimal' : undefined}
          autoComplete="off"
          spellCheck={numeric || code ? false : undefined}
          onChange={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </Labelled>
  );
}

/** Room for several lines. */
export function TypedLong({ rows = 4, ...common }: Common & { rows?: number }) {
  const { value, onChange } = common;
  return (
    <Labelled {...common}>
      {(described) => (
        <textarea {...described} rows={rows} value={value} onChange={(event) => onChange(event.currentTarget.value)} />
      )}
    </Labelled>
  );
}

/** One of a list. */
export function Chosen({ options, ...common }: Common & { options: readonly { value: string; label: string }[] }) {
  const { value, onChange } = common;
  return (
    <Labelled {...common}>
      {(described) => (
        <select {...described} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

function Labelled({
  label,
  at,
  rule,
  children,
}: Pick<Common, 'label' | 'at' | 'rule'> & {
  children: (described: { id: string; 'aria-describedby'?: string; 'aria-invalid'?: true }) => React.ReactNode;
}) {
  const id = useId();
  const fault = useEditor().faultAt(at);
  const describedBy = [fault && `${id}-fault`, rule && `${id}-rule`].filter(Boolean).join(' ');
  return (
    <div className={ui.field}>
      <label className={ui.label} htmlFor={id}>
        {label}
      </label>
      {children({
        id,
        ...(describedBy && { 'aria-describedby': describedBy }),
        ...(fault !== undefined && { 'aria-invalid': true }),
      })}
      <FaultText id={`${id}-fault`} at={at} />
      {rule && (
        <p id={`${id}-rule`} className={ui.small}>
          {rule}
        </p>
      )}
    </div>
  );
}

/** What is wrong with a field or a group, where it stands. */
export function FaultText({ id, at }: { id?: string; at: string }) {
  const fault = useEditor().faultAt(at);
  if (fault === undefined) return null;
  return (
    <p id={id} className={styles.fault} data-fault={at}>
      {fault}
    </p>
  );
}
