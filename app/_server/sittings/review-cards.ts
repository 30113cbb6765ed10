import { listMarked, type MarkedLine } from '@/db/queries/question-marks';
import { listLiveVersions } from '@/db/queries/written-questions';
import { questionKindIds } from '@/lib/questions/question';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { type Card, dueOn, type Review, scheduleOf, weakestFirst } from '@/lib/review/schedule';
import { database } from '../database';
import { readSettings } from '../organization-settings';
import type { Desk } from '../permit';
import { listUntold } from '../turns/untold';
import type { Choice } from './choose-question';
import { dayIn } from './day-in';

/** What a learner is to be asked again, as their own marks say. */
export interface ReviewCards {
  /** Longest overdue first. */
  due: Choice[];
  /** What is not due, least remembered first. */
  others: Choice[];
  /** The day on which the next of the others is due, counted from 1970; undefined where there is none. */
  nextDay: number | undefined;
}

/** Cards of what can still be asked: one for each kind on a topic, one for each written question. */
export async function reviewCards(desk: Desk, at: Date): Promise<ReviewCards> {
  const { timeZone } = await readSettings(desk.organizationId);
  const today = dayIn(timeZone, at);
  const live = new Map((await listLiveVersions(database(), desk.organizationId)).map((one) => [one.questionId, one]));
  const untold = await listUntold(database(), desk, at);
  // When something is asked again would tell how it was answered.
  const marked = (await listMarked(database(), desk)).filter(({ sittingId }) => !untold.sittings.has(sittingId));
  const choices = new Map<string, Choice>();
  for (const { questionId, id, body } of live.values())
    choices.set(questionId, { topic: body.topics[0] ?? '', asked: { written: id } });
  const cards = scheduleOf(marked.flatMap((line) => reviewOf(line, timeZone)));
  const choose = ({ card }: Card) => choices.get(card) ?? kindOnTopic(card) ?? [];
  const possible = cards.filter((card) => [choose(card)].flat().length > 0);
  const others = possible.filter(({ due }) => due > today);
  return {
    due: dueOn(possible, today).flatMap(choose),
    others: weakestFirst(others, today).flatMap(choose),
    nextDay: others.length > 0 ? Math.min(...others.map(({ due }) => due)) : undefined,
  };
}

function reviewOf({ spec, writtenId, credit, markedAt }: MarkedLine, timeZone: string): Review[] {
  const card = spec ? cardOf(spec.kind, spec.topic) : writtenId;
  return card ? [{ card, credit, day: dayIn(timeZone, markedAt) }] : [];
}

function cardOf(kind: string, topic = ''): string {
  return `${kind} ${topic}`;
}

function kindOnTopic(card: string): Choice | undefined {
  const [id, topic = ''] = card.split(' ');
  const kind = questionKindIds.find((known) => known === id);
  return kind && kindsOn(topic).includes(kind) ? { topic, asked: { kind } } : undefined;
}
