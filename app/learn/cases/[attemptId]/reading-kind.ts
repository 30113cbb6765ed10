import type { ReadingItem } from '@/app/_server/attempt-view';

/** Whether a reading came to something that could have hurt somebody, and to nothing that could be judged. */
export function isHarm({ kind }: ReadingItem['shown']): boolean {
  return kind === 'destroyed' || kind === 'jet';
}

/** A chart and a long warning need the whole width; what belongs to them stands below. */
export function isWide(item: ReadingItem): boolean {
  return item.shown.kind === 'jet' || isRecording(item);
}

/** Whether a recorder's chart is on the bench. */
export function isRecording({ gauge, shown }: ReadingItem): boolean {
  return gauge?.display === 'trace' && !isHarm(shown);
}
