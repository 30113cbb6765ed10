'use client';

import { useErrorWords } from './_ui/error-words';
import ui from './_ui/ui.module.css';

/** Shown when a page breaks. Acts are stored as they happen, so trying again loses nothing. */
export default function ErrorPage({ retry }: { retry: () => void }) {
  const words = useErrorWords();
  return (
    <main id="main" className={`${ui.page} ${ui.narrow}`}>
      <section className={`${ui.panel} ${ui.stack}`} role="alert">
        <h1>{words.title}</h1>
        <p>{words.body}</p>
        <p>
          <button type="button" className={ui.primary} onClick={() => retry()}>
            {words.retry}
          </button>
        </p>
      </section>
    </main>
  );
}
