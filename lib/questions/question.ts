import type { AnswerForm, Key } from './answer';
import type { Figure } from './figure';
import type { Line } from './line';

/** Moves whenever a change of code moves a generated question. */
export const QUESTION_VERSION = 5;

/** Kinds of generated questions, in the order of the work they drill. */
export const questionKindIds = [
  'find-it',
  'put-in-order',
  'which-limit',
  'read-dial',
  'judge',
  'work-out',
  'what-happens',
  'what-is-left',
  'next-check',
  'which-tool',
  'read-code',
  'spot-hazard',
  'read-trace',
] as const;

export type QuestionKindId = (typeof questionKindIds)[number];

/** Which question of a kind. The same spec, content and version give the same question on any machine. */
export interface QuestionSpec {
  kind: QuestionKindId;
  seed: string;
  /** Drawn from the seed where none is named. */
  rig?: string;
  /** One of those that the kind has questions on; drawn by the kind where none is named. */
  topic?: string;
}

/** What a kind makes, or an instructor wrote: all but where it came from. Holds the key: never leaves the server whole. */
export interface QuestionBody {
  /** Paragraphs. */
  stem: readonly Line[];
  figure?: Figure;
  answer: AnswerForm;
  key: Key;
  /** How the key comes about, with this question's numbers. */
  explanation: readonly Line[];
  /** At least one. */
  topics: readonly string[];
  /** Design difficulty, logits, and what it was made from. */
  difficulty: number;
  features: Readonly<Record<string, number>>;
  /** Chance of a right answer by somebody who knows nothing, 0…1. */
  guessFloor: number;
  /** Marks that can be told apart: an answer's score is one of 0…steps. */
  steps: number;
  /** How long somebody who knows takes. */
  seconds: number;
  /** Ids of the cautions that go with what is asked. */
  cautions?: readonly string[];
  /** Those that would give the key away: they come with its mark. */
  cautionsAfter?: readonly string[];
}

export interface GeneratedQuestion extends QuestionBody {
  spec: QuestionSpec;
  /** The rig it is about. */
  rig: string;
}

/** What may be seen before the answer. */
export type QuestionFace = Pick<QuestionBody, 'stem' | 'figure' | 'answer' | 'cautions'>;

/** The face, field by field, so that nothing else can slip through. */
export function faceOf({ stem, figure, answer, cautions }: QuestionBody): QuestionFace {
  return { stem, answer, ...(figure && { figure }), ...(cautions && { cautions }) };
}
