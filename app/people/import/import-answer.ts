import type { ReactNode } from 'react';

/** What a list came to: what was wrong with it as a whole, or what to show, and the button that goes on, if any. */
export type ImportAnswer = { error: string } | { good: number; submit: string | null; shown: ReactNode };
