'use client';

import { createContext, useContext } from 'react';

interface Words {
  title: string;
  body: string;
  retry: string;
}

const WordsContext = createContext<Words>({ title: '', body: '', retry: '' });

/** Hands the words of the error page to the browser beforehand: when it is needed, the server may not answer. */
export function ErrorWords({ children, ...words }: Words & { children: React.ReactNode }) {
  return <WordsContext value={words}>{children}</WordsContext>;
}

export function useErrorWords(): Words {
  return useContext(WordsContext);
}
