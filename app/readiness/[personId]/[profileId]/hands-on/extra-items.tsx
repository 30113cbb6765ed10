'use client';

import { useState } from 'react';
import ui from '@/app/_ui/ui.module.css';
import type messages from '@/content/messages/en.json';
import styles from '../../../readiness.module.css';

type Words = (typeof messages)['handsOn'];

/** As many points as something of one's own can earn. */
const OUT_OF = 3;

/** Things that were looked at besides those of the role, in somebody's own words. */
export function ExtraItems({ words, topics }: { words: Words; topics: readonly { value: string; label: string }[] }) {
  const [rows, setRows] = useState<readonly number[]>([]);
  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{words.extras}</legend>
      {rows.map((row, index) => (
        <div key={row} className={`${styles.check} ${styles.extra}`}>
          <label className={`${ui.field} ${styles.whole}`}>
            <span>{words.extraText}</span>
            <textarea name="extra-text" rows={2} maxLength={400} />
          </label>
          <label className={ui.field}>
            <span>{words.extraTopic}</span>
            <select name="extra-topic" defaultValue="">
              <option value="" />
              {topics.map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          <label className={ui.field}>
            <span>{words.extraScore}</span>
            <select name="extra-score" defaultValue="">
              <option value="" />
              {Array.from({ length: OUT_OF + 1 }, (_, score) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a score is its own name
                <option key={score} value={score}>
                  {score}
                </option>
              ))}
            </select>
          </label>
          <button
            type="button"
            aria-label={words.removeExtra.replace('{number}', String(index + 1))}
            onClick={() => setRows(rows.filter((one) => one !== row))}
          >
            {words.remove}
          </button>
        </div>
      ))}
      <button type="button" className={styles.add} onClick={() => setRows([...rows, (rows.at(-1) ?? 0) + 1])}>
        {words.addExtra}
      </button>
    </fieldset>
  );
}
