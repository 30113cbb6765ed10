import { catalogue } from '@/app/_server/catalogue';
import { askableOn } from '@/app/_server/sittings/choose-question';
import type { Askable } from '@/lib/questions/next-asked';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { type RandomStream, randomStream } from '@/lib/random';
import { topicsInOrder } from '@/lib/topics/topic';
import type { MakeUp } from '../policies/make-up';
import type { DemoLearner } from './play-history';
import { playSitting } from './play-sitting';
import { minutesAfter, morningsOn, workingDays } from './working-days';

const DRILLED = 5;
const CHECKED = 8;
/** After the morning's case. */
const AFTERNOON = 6 * 60;
/** Questions that somebody wrote, once they are live. */
const WRITTEN = 3;

/** Has an apprentice answer questions on some afternoons, the same every time but for the dates. */
export async function playQuestions(learner: DemoLearner, now: Date): Promise<void> {
  const draw = randomStream(learner.handle, 'demo questions');
  const { desk, makeUp, weeks, index } = learner;
  const topics = topicsInOrder(catalogue()).map(({ id }) => id);
  const days = workingDays(now, weeks);
  const [first = now, second = now] = morningsOn(days.slice(0, -1), 2, draw);
  const common = { knows: knowledgeOf(makeUp) };
  const drilled = generatedOn([topics[index % topics.length] ?? '']);
  await playSitting(
    desk,
    {
      ...common,
      key: 'demo-drill',
      mode: 'drill',
      askable: drilled,
      questions: DRILLED,
      startedAt: inTheAfternoon(first),
    },
    draw,
  );
  const checked = generatedOn(threeOf(topics, draw));
  await playSitting(
    desk,
    {
      ...common,
      key: 'demo-check',
      mode: 'check',
      askable: checked,
      questions: CHECKED,
      startedAt: inTheAfternoon(second),
    },
    draw,
  );
  if (learner.handPlayed) await playWritten(learner, draw, days.at(-1) ?? now);
}

/** The questions of the instructors, on the day on which they went live; free text waits for one of them. */
async function playWritten({ desk, makeUp }: DemoLearner, draw: RandomStream, day: Date): Promise<void> {
  const seen = new Set<string>();
  const askable = new Map<string, Askable>();
  for (const [topic, { written }] of await askableOn(desk.organizationId, [...catalogue().topics.keys()])) {
    const others = written.filter((id) => !seen.has(id));
    if (others.length > 0) askable.set(topic, { kinds: [], written: others });
    for (const id of others) seen.add(id);
  }
  if (askable.size === 0) return;
  const startedAt = minutesAfter(day, 8 * 60 + AFTERNOON);
  const play = { key: 'demo-written', mode: 'check', askable, questions: WRITTEN, startedAt } as const;
  await playSitting(desk, { ...play, knows: knowledgeOf(makeUp) }, draw);
}

/** Assumed: what judges readings and gives reasons answers questions. */
function knowledgeOf({ verdicts, reasons }: MakeUp): number {
  return (verdicts + reasons) / 2;
}

/** Without what people wrote, which was not there yet. */
function generatedOn(topics: readonly string[]): Map<string, Askable> {
  return new Map(topics.map((topic) => [topic, { kinds: kindsOn(topic), written: [] }]));
}

function threeOf(topics: readonly string[], draw: RandomStream): string[] {
  const from = Math.floor(draw.next() * (topics.length - 2));
  return topics.slice(from, from + 3);
}

function inTheAfternoon(morning: Date): Date {
  return minutesAfter(morning, AFTERNOON);
}
