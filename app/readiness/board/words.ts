import { getMessages } from 'next-intl/server';
import type messages from '@/content/messages/en.json';
import type { BoardWords } from './board-words';

/** The board's words, as they stand in the catalogue of messages. */
export async function readBoardWords(): Promise<BoardWords> {
  const { readiness } = (await getMessages()) as Pick<typeof messages, 'readiness'>;
  const { decisions, missings, safeties } = readiness;
  return { ...readiness.board, decisions, missings, safeties };
}
