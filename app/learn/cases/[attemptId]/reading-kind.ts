import type { ReadingItem } from '@/app/_server/attempt-view';

/** Whether a reading came to something that could have hurt somebody, and to nothing that could be judged. */
export function isHarm({ kind }: ReadingItem['shown']): boolean {
  return kind === 'destroyed' || kind === 'jet';
}

/** A chart needs the whole width; the answer stands below it. */
export function isRecording({ gauge, shown }: ReadingItem): boolean {
  return gauge?.display === 'trace' && !isHarm(shown);
}
