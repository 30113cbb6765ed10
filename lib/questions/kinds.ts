import type { QuestionKind } from './kind';
import { readDial } from './kinds/read-dial';
import { type QuestionKindId, questionKindIds } from './question';

const all: readonly QuestionKind[] = [readDial];

/** Every kind of generated question, by id, in the order of the list. */
export const kinds: ReadonlyMap<QuestionKindId, QuestionKind> = new Map(
  questionKindIds.flatMap((id) => all.filter((kind) => kind.id === id).map((kind) => [id, kind])),
);
