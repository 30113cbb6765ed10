import { listReviewed, type ReviewedLine } from '@/db/queries/sitting-questions';
import { listLiveVersions } from '@/db/queries/written-questions';
import { questionKindIds } from '@/lib/questions/question';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { type Due, type Reviewed, scheduleOf } from '@/lib/review/schedule';
import { database } from '../database';
import type { Desk } from '../permit';
import type { Askable } from './choose-question';

export interface DueNow {
  /** Longest due first. */
  now: Askable[];
  /** When the next one is due after these; null where nothing has been asked yet. */
  next: Date | null;
}

/** What a learner has to be asked again, as their own marks say. What content no longer has is not due. */
export async function dueNow(desk: Desk, at: Date): Promise<DueNow> {
  const live = new Map((await listLiveVersions(database(), desk.organizationId)).map((one) => [one.questionId, one]));
  const schedule = scheduleOf((await listReviewed(database(), desk)).flatMap(reviewedOf));
  const askable = ({ of }: Due): Askable | undefined => {
    const [kind, topic = ''] = of.split(' ');
    const known = questionKindIds.find((id) => id === kind);
    if (known) return kindsOn(topic).includes(known) ? { kind: known, topic } : undefined;
    const version = live.get(of);
    return version && { topic: version.body.topics[0] ?? '', writtenVersionId: version.id };
  };
  const isDue = ({ due }: Due) => due <= at.getTime();
  const later = schedule.find((one) => !isDue(one) && askable(one));
  return { now: schedule.filter(isDue).flatMap((one) => askable(one) ?? []), next: later ? new Date(later.due) : null };
}

/** Free text that nobody has marked says nothing yet. */
function reviewedOf({ spec, writtenId, mark, markedAt }: ReviewedLine): Reviewed[] {
  if (mark.credit === null) return [];
  const of = spec ? `${spec.kind} ${spec.topic ?? ''}` : writtenId;
  return of ? [{ of, credit: mark.credit, at: markedAt.getTime() }] : [];
}
