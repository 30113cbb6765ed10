import ui from '@/app/_ui/ui.module.css';
import styles from '../questions.module.css';
import type { ShownRow } from './import-answer';

export interface RowWords {
  colPlace: string;
  colTitle: string;
  colTaken: string;
  colSays: string;
  notTaken: string;
}

/** The questions of a file, and what would become of each. */
export function ImportedRows({ rows, words }: { rows: readonly ShownRow[]; words: RowWords }) {
  return (
    <table className={styles.questions}>
      <thead>
        <tr>
          <th scope="col">{words.colPlace}</th>
          <th scope="col">{words.colTitle}</th>
          <th scope="col">{words.colTaken}</th>
          <th scope="col">{words.colSays}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ place, title, takenAs, says }) => (
          <tr key={place}>
            <td data-label={words.colPlace}>{place}</td>
            <td className={styles.title}>{title || '–'}</td>
            <td data-label={words.colTaken}>{takenAs ?? <span className={ui.alert}>{words.notTaken}</span>}</td>
            <td>
              {says.map((said) => (
                <span key={said} className={styles.sub}>
                  {said}
                </span>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
