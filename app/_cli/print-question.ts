import { type Said, sayer } from '@/app/_server/questions/say';
import type { Catalogue } from '@/lib/catalogue';
import type { Line } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import type { QuestionContent } from '@/lib/questions/question-content';

export type DescribedQuestion = ReturnType<typeof describeQuestion>;

/** A question with its key, every line of it in words as well as in codes. For authors and tests; never for a browser. */
export function describeQuestion(question: GeneratedQuestion, content: QuestionContent, catalogue: Catalogue) {
  const say = sayer(content, catalogue);
  const {
    spec,
    rig,
    stem,
    figure,
    answer,
    key,
    explanation,
    topics,
    difficulty,
    features,
    guessFloor,
    steps,
    seconds,
  } = question;
  return {
    kind: spec.kind,
    seed: spec.seed,
    rig,
    stem: stem.map((line) => textOf(say(line))),
    figure: figure ?? null,
    answer: worded(answer, say),
    key: worded(key, say),
    explanation: explanation.map((line) => textOf(say(line))),
    topics,
    difficulty,
    features,
    guessFloor,
    steps,
    seconds,
  };
}

function textOf(said: Said): string {
  return 'text' in said ? said.text : said.markdown;
}

/** The same with the words of each line beside its code. */
function worded(value: unknown, say: (line: Line) => Said): unknown {
  if (Array.isArray(value)) return value.map((item) => worded(item, say));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([name, item]) => [name, worded(item, say)]);
  const text = 'say' in value && typeof value.say === 'string' ? { text: textOf(say(value as Line)) } : {};
  return { ...Object.fromEntries(entries), ...text };
}

export function printQuestion({ stem, answer, key, explanation, topics, difficulty, guessFloor }: DescribedQuestion) {
  return [
    ...stem,
    '',
    `answer       ${JSON.stringify(answer)}`,
    `key          ${JSON.stringify(key)}`,
    '',
    ...explanation,
    '',
    `topics       ${topics.join(', ')}`,
    `difficulty   ${difficulty} logits, guessing ${guessFloor}`,
  ].join('\n');
}
