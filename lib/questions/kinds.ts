import type { QuestionKind } from './kind';
import { findIt } from './kinds/find-it';
import { judge } from './kinds/judge';
import { nextCheck } from './kinds/next-check';
import { putInOrder } from './kinds/put-in-order';
import { readCode } from './kinds/read-code';
import { readDial } from './kinds/read-dial';
import { readTrace } from './kinds/read-trace';
import { spotHazard } from './kinds/spot-hazard';
import { whatHappens } from './kinds/what-happens';
import { whatIsLeft } from './kinds/what-is-left';
import { whichLimit } from './kinds/which-limit';
import { whichTool } from './kinds/which-tool';
import { workOut } from './kinds/work-out';
import { type QuestionKindId, questionKindIds } from './question';

const all: readonly QuestionKind[] = [
  readTrace,
  whatIsLeft,
  nextCheck,
  readDial,
  findIt,
  judge,
  workOut,
  putInOrder,
  whichLimit,
  whatHappens,
  spotHazard,
  whichTool,
  readCode,
];

/** Every kind of generated question, by id, in the order of the list. */
export const kinds: ReadonlyMap<QuestionKindId, QuestionKind> = new Map(
  questionKindIds.flatMap((id) => all.filter((kind) => kind.id === id).map((kind) => [id, kind])),
);
