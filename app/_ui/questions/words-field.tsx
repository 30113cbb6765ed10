'use client';

import { useId, useState } from 'react';
import ui from '../ui.module.css';
import styles from './question.module.css';

/** Free text, with how much of its room is taken. What is too long is not cut: whoever wrote it shall choose what goes. */
export function WordsField({
  label,
  room,
  tooLong,
  most,
  given,
}: {
  label: string;
  room: string;
  tooLong: string;
  most: number;
  given: string;
}) {
  const id = useId();
  const [length, setLength] = useState(given.length);
  const over = length > most;
  return (
    <div className={styles.words}>
      <label className={ui.field}>
        <b>{label}</b>
        <textarea
          name="text"
          rows={8}
          required
          defaultValue={given}
          aria-describedby={id}
          aria-invalid={over}
          onChange={({ currentTarget }) => setLength(currentTarget.value.trim().length)}
        />
      </label>
      <p id={id} className={over ? ui.alert : styles.count}>
        {`${length} / ${most} ${room}`}
        {over && ` ${tooLong}`}
      </p>
    </div>
  );
}
