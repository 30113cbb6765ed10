'use client';

import { createContext, useContext } from 'react';
import type messages from '@/content/messages/en.json';

export type EditorWords = (typeof messages)['written']['editor'];

interface Editor {
  words: EditorWords;
  /** What is wrong with a field, by its path. */
  faultAt: (at: string) => string | undefined;
}

const EditorContext = createContext<Editor | null>(null);

export function EditorProvider({ value, children }: { value: Editor; children: React.ReactNode }) {
  return <EditorContext value={value}>{children}</EditorContext>;
}

export function useEditor(): Editor {
  const editor = useContext(EditorContext);
  if (!editor) throw new Error('Fields of the editor need it around them');
  return editor;
}
