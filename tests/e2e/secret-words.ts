import { sayer } from '@/app/_server/questions/say';
import type { Line } from '@/lib/questions/line';
import type { QuestionSpec } from '@/lib/questions/question';
import { kindOf } from '@/lib/questions/question-from-seed';
import { catalogue } from '../support/bench-rig';
import { aSpec, kindsAndForms, questionOf } from './at-questions';

/** A question with what may be read of it before the answer, and what may not. */
export interface SecretQuestion {
  name: string;
  spec: QuestionSpec;
  /** The first line of its stem, in letters. */
  stem: string;
  /** All that it says while it is open, in letters. */
  open: string;
  /** Sentences that only somebody who has answered may read, in letters. */
  secrets: readonly string[];
}

let every: readonly SecretQuestion[] | undefined;

/** Every kind in every form, in the order of a check that asks them all. */
export function everySecret(): readonly SecretQuestion[] {
  every ??= kindsAndForms.map(({ name, kind, form }) => secretQuestion(name, aSpec(kind, form, 'each')));
  return every;
}

export function secretQuestion(name: string, spec: QuestionSpec): SecretQuestion {
  const { stem, answer, figure, key, explanation } = questionOf(spec);
  const because = 'because' in key ? Object.values(key.because ?? {}) : [];
  const slips =
    key.form === 'numbers' ? Object.values(key.parts).flatMap((part) => part.slips.map(({ line }) => line)) : [];
  const open = inLetters(JSON.stringify([stem, answer, figure], (_, value) => lineIn(value, spec)));
  const secrets = [...explanation, ...because, ...slips]
    .map((line) => said(line, spec))
    .filter((sentence) => sentence.length > 20)
    .map(inLetters)
    .filter((secret) => !open.includes(secret));
  return { name, spec, stem: stem[0] ? inLetters(said(stem[0], spec)) : '', open, secrets };
}

function lineIn(value: unknown, spec: QuestionSpec): unknown {
  return typeof value === 'object' && value !== null && 'say' in value ? said(value as Line, spec) : value;
}

function said(line: Line, { kind }: QuestionSpec): string {
  const words = sayer(kindOf(kind, catalogue).content, catalogue)(line);
  return 'text' in words ? words.text : words.markdown;
}

/** Text without its signs, however an answer writes them. */
export function inLetters(text: string): string {
  return text
    .replace(/&(?:#x?[0-9a-f]+|[a-z]+);|\\u[0-9a-f]{4}|<!--.*?-->/gi, '')
    .replace(/[^a-z0-9]/gi, '')
    .toLowerCase();
}
