import { type ComponentProps, useId } from 'react';
import ui from './ui.module.css';

/** Something to type in, with its label and, below it, what may be typed. */
export function Field({
  label,
  rule,
  code = false,
  ...input
}: {
  label: string;
  rule?: string;
  /** Letters of one width, for what is copied sign by sign. */
  code?: boolean;
} & Omit<ComponentProps<'input'>, 'className' | 'aria-describedby'>) {
  const id = useId();
  return (
    <>
      <label className={ui.field}>
        <span>{label}</span>
        <input {...(code && { className: ui.code })} {...(rule && { 'aria-describedby': id })} {...input} />
      </label>
      {rule && (
        <p id={id} className={ui.small}>
          {rule}
        </p>
      )}
    </>
  );
}

/** How a name that one signs in with is typed: as it is, without help. */
export const asItIs = { autoCapitalize: 'none', spellCheck: false } as const;
