'use client';

import { type ComponentProps, useId } from 'react';
import ui from '@/app/_ui/ui.module.css';
import { useWrong } from '@/app/assignments/field-form';

/** Room for sentences, with its rule below it and, once it was sent, what is wrong with it. */
export function WrongArea({
  label,
  rule,
  name,
  ...area
}: { label: string; rule?: string; name: string } & Omit<ComponentProps<'textarea'>, 'className' | 'name'>) {
  const id = useId();
  const wrong = useWrong(name);
  return (
    <div className={ui.field}>
      <label className={ui.field}>
        <span>{label}</span>
        <textarea name={name} rows={4} aria-describedby={id} aria-invalid={wrong !== undefined} {...area} />
      </label>
      <p id={id} className={wrong ? ui.alert : ui.small} hidden={!wrong && !rule}>
        {wrong ?? rule}
      </p>
    </div>
  );
}
