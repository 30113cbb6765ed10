import { catalogue } from '@/app/_server/catalogue';
import { codeText } from '@/lib/cases/describe-case';
import styles from './gauges/gauges.module.css';

/** Trouble codes with what the standard calls their numbers. */
export function TroubleCodes({ codes }: { codes: readonly { spn: number; fmi: number }[] }) {
  return (
    <ul className={styles.codes}>
      {codes.map(({ spn, fmi }) => (
        <li key={`${spn}-${fmi}`}>
          {`SPN ${spn} · FMI ${fmi}`}
          <span>{codeText(catalogue(), spn, fmi)}</span>
        </li>
      ))}
    </ul>
  );
}
