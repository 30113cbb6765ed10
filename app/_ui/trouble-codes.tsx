import { useTranslations } from 'next-intl';
import styles from './gauges/gauges.module.css';

/** Trouble codes with what the standard's numbers mean. */
export function TroubleCodes({ codes }: { codes: readonly { spn: number; fmi: number }[] }) {
  const t = useTranslations('codes');
  return (
    <ul className={styles.codes}>
      {codes.map(({ spn, fmi }) => (
        <li key={`${spn}-${fmi}`}>
          {`SPN ${spn} · FMI ${fmi}`}
          <span>{`${word(t, `spn.${spn}`) ?? t('unknownSpn')}: ${word(t, `fmi.${fmi}`) ?? t('unknownFmi')}`}</span>
        </li>
      ))}
    </ul>
  );
}

type CodeWords = ReturnType<typeof useTranslations<'codes'>>;

/** The rig says which numbers there are; the catalogue of words may not know one. */
function word(t: CodeWords, key: string): string | undefined {
  return t.has(key as Parameters<CodeWords>[0]) ? t(key as Parameters<CodeWords>[0]) : undefined;
}
