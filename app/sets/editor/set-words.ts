import type messages from '@/content/messages/en.json';
import type { QuestionKindId } from '@/lib/questions/question';

export type SetWords = (typeof messages)['sets']['editor'];

export interface Choice {
  value: string;
  label: string;
}

/** What there is to choose from. */
export interface SetChoices {
  topics: readonly Choice[];
  rigs: readonly Choice[];
  /** Live questions that people of the organisation wrote. */
  written: readonly Choice[];
  kinds: readonly { value: QuestionKindId; label: string; topics: readonly string[] }[];
  blueprints: readonly Choice[];
}
