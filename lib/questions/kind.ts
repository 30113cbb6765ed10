import type { z } from 'zod';
import type { Catalogue } from '../catalogue';
import type { RandomStream } from '../random';
import type { Rig } from '../rig/rig';
import type { QuestionBody, QuestionKindId } from './question';

/** What a kind makes a question from. */
export interface Draw<Ranges> {
  seed: string;
  rig: Rig;
  /** The topic that was asked for; one of the kind's. */
  topic: string | undefined;
  ranges: Ranges;
  catalogue: Catalogue;
  /** A stream of its own for each name, so that one more draw moves no other. */
  stream(name: string): RandomStream;
}

/** A body as a kind makes it: difficulty follows from the features, by the weights in content. */
export type DrawnBody = Omit<QuestionBody, 'difficulty'>;

/** A kind of generated question. */
export interface QuestionKind<Schema extends z.ZodType = z.ZodType> {
  id: QuestionKindId;
  /** Shape of `ranges` in the kind's content. */
  ranges: Schema;
  /** Topics that it can be asked on. */
  topics: readonly string[];
  /** Rigs that it can be asked on; all where it does not say. */
  rigs?: (catalogue: Catalogue) => readonly string[];
  /** Asks what is safe, so that general cautions beside it would answer it. */
  asksWhatIsSafe?: boolean;
  make(draw: Draw<z.infer<Schema>>): DrawnBody;
}

/** For the types' sake. */
export function defineKind<Schema extends z.ZodType>(kind: QuestionKind<Schema>): QuestionKind<Schema> {
  return kind;
}
