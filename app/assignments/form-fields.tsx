'use client';

import { type ComponentProps, useId } from 'react';
import ui from '@/app/_ui/ui.module.css';
import styles from './assignments.module.css';
import { useWrong } from './field-form';

/** Something to type in, with its rule below it and, once it was sent, what is wrong with it. */
export function WrongField({
  label,
  rule,
  name,
  ...input
}: { label: string; rule?: string; name: string } & Omit<ComponentProps<'input'>, 'className' | 'name'>) {
  const id = useId();
  const wrong = useWrong(name);
  return (
    <div className={styles.one}>
      <label className={ui.field}>
        <span>{label}</span>
        <input name={name} aria-describedby={id} aria-invalid={wrong !== undefined} {...input} />
      </label>
      <Below id={id} wrong={wrong} rule={rule} />
    </div>
  );
}

/** One of a list, with the same below it. */
export function WrongSelect({
  label,
  rule,
  name,
  options,
  ...select
}: {
  label: string;
  rule?: string;
  name: string;
  options: readonly { value: string; label: string }[];
} & Omit<ComponentProps<'select'>, 'className' | 'name'>) {
  const id = useId();
  const wrong = useWrong(name);
  return (
    <div className={styles.one}>
      <label className={ui.field}>
        <span>{label}</span>
        <select name={name} aria-describedby={id} aria-invalid={wrong !== undefined} {...select}>
          {options.map(({ value, label: shown }) => (
            <option key={value} value={value}>
              {shown}
            </option>
          ))}
        </select>
      </label>
      <Below id={id} wrong={wrong} rule={rule} />
    </div>
  );
}

/** Fields that belong together, under a heading. */
export function FieldGroup({
  legend,
  rule,
  name,
  children,
}: {
  legend: string;
  rule?: string | undefined;
  /** By which what is wrong with all of them together is found. */
  name?: string;
  children: React.ReactNode;
}) {
  const id = useId();
  const wrong = useWrong(name ?? '');
  return (
    <fieldset className={styles.group} aria-describedby={id} data-wrong={wrong !== undefined}>
      <legend>{legend}</legend>
      <Below id={id} wrong={wrong} rule={rule} />
      {children}
    </fieldset>
  );
}

function Below({ id, wrong, rule }: { id: string; wrong: string | undefined; rule: string | undefined }) {
  return (
    <p id={id} className={wrong ? ui.alert : ui.small} hidden={!wrong && !rule}>
      {wrong ?? rule}
    </p>
  );
}
