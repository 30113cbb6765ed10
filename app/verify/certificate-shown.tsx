import type { CertificateView } from '@/app/_server/certificates/certificate-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './verify.module.css';

export interface ShownWords {
  results: string;
  topic: string;
  value: string;
  cut: string;
  invented: string;
}

/** What came of looking at a certificate. */
export function CertificateShown({ view, words }: { view: CertificateView; words: ShownWords }) {
  return (
    <div className={ui.stack}>
      <p className={view.ok ? styles.good : styles.refused}>
        <span aria-hidden="true">{view.ok ? '✓' : '✕'}</span> <strong>{view.headline}</strong>
      </p>
      {view.because && <p>{view.because}</p>}
      {view.named && <p>{view.named}</p>}
      {view.invented && <p className={ui.notice}>{words.invented}</p>}
      {view.facts.length > 0 && <Facts facts={view.facts} />}
      {view.results.length > 0 && <Results results={view.results} words={words} />}
    </div>
  );
}

/** What is said of something, each under its name. */
export function Facts({ facts }: { facts: CertificateView['facts'] }) {
  return (
    <dl className={styles.facts}>
      {facts.map(({ term, text }) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function Results({ results, words }: { results: CertificateView['results']; words: ShownWords }) {
  return (
    <table className={`${ui.figures} ${styles.results}`}>
      <caption>{words.results}</caption>
      <thead>
        <tr>
          <th scope="col">{words.topic}</th>
          <th scope="col">{words.value}</th>
          <th scope="col">{words.cut}</th>
        </tr>
      </thead>
      <tbody>
        {results.map(({ name, value, cut }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
            <td>{cut}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
