'use client';

import { type ChangeEvent, useId, useState } from 'react';
import ui from '@/app/_ui/ui.module.css';
import type { UploadAnswer } from '../pictures/upload-answer';
import type { DraftPicture } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { FaultText, Typed } from './fields';

const MOST_BYTES = 5 * 1024 * 1024;

/** A picture to send, and what it shows in words. */
export function PictureField({
  label,
  at,
  picture,
  onChange,
  shown = true,
}: {
  label: string;
  at: string;
  picture: DraftPicture | null;
  onChange: (picture: DraftPicture | null) => void;
  /** Whether it is shown here; not where it is shown elsewhere. */
  shown?: boolean;
}) {
  const { words } = useEditor();
  const [error, setError] = useState<string>();
  const [sending, setSending] = useState(false);
  const id = useId();

  async function take({ currentTarget }: ChangeEvent<HTMLInputElement>) {
    const [file] = currentTarget.files ?? [];
    if (!file) return;
    setError(undefined);
    setSending(true);
    const answer = file.size > MOST_BYTES ? { error: words.pictureBig } : await send(file, words.failed);
    setSending(false);
    // The same file can be chosen again.
    currentTarget.value = '';
    if ('error' in answer) setError(answer.error);
    else onChange({ ...answer.picture, alt: picture?.alt ?? '' });
  }

  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{label}</legend>
      {picture && shown && (
        // biome-ignore lint/performance/noImgElement: served as it is, behind a door
        <img className={styles.picture} src={`/pictures/${picture.id}`} alt={picture.alt} />
      )}
      <div className={ui.field}>
        <label className={ui.label} htmlFor={id}>
          {words.pictureChoose}
        </label>
        <input
          id={id}
          type="file"
          accept="image/png,image/jpeg,image/webp"
          aria-describedby={`${id}-rule`}
          onChange={take}
        />
        <p id={`${id}-rule`} className={ui.small}>
          {words.pictureRule}
        </p>
      </div>
      <FaultText at={at} />
      <FaultText at={`${at}.id`} />
      <div>
        <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
        <div role="status">{sending && <p className={ui.small}>{words.pictureSending}</p>}</div>
      </div>
      {picture && (
        <>
          <Typed
            label={words.alt}
            at={`${at}.alt`}
            value={picture.alt}
            most={500}
            rule={words.altRule}
            onChange={(alt) => onChange({ ...picture, alt })}
          />
          <button type="button" className={styles.quiet} onClick={() => onChange(null)}>
            {words.pictureRemove}
          </button>
        </>
      )}
    </fieldset>
  );
}

async function send(file: File, failed: string): Promise<UploadAnswer> {
  try {
    const answered = await fetch('/questions/pictures', { method: 'POST', body: file });
    return (await answered.json()) as UploadAnswer;
  } catch {
    return { error: failed };
  }
}
