import { findMostExtraTime } from '@/db/queries/assigned-people';
import { findAcceptedAt } from '@/db/queries/calibrations';
import { findAskedAt } from '@/db/queries/regrades';
import { listFirstResults } from '@/db/queries/turn-results';
import { findAssignmentsSet } from '@/db/queries/turn-work';
import type { assignments } from '@/db/schema';
import { takenUntil } from '@/lib/assignments/phase';
import { responsesOf, type SetResponses } from '@/lib/gradebook/responses-of';
import type { TaskResult } from '@/lib/gradebook/task-result';
import type { Line } from '@/lib/questions/line';
import { choiceCounts, type OptionCount } from '@/lib/statistics/choices';
import { type ItemFlag, itemFlags } from '@/lib/statistics/item-flags';
import { type ItemStatistics, itemStatistics } from '@/lib/statistics/item-statistics';
import { type NoRefit, type Refit, refit } from '@/lib/statistics/refit';
import { type Reliability, reliabilityOf } from '@/lib/statistics/reliability';
import { type TimeQuantiles, timeQuantiles } from '@/lib/statistics/time-quantiles';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { plainText } from '../questions/plain-text';
import { settleTurns } from './settle-turns';

export interface ReadItem {
  place: number;
  kind: TaskResult['kind'];
  statistics: ItemStatistics;
  flags: readonly ItemFlag[];
  options: readonly OptionCount[];
  /** Words for the options and causes by their ids. */
  nameOf: Readonly<Record<string, string>>;
  times: TimeQuantiles | undefined;
  /** Of the set without this item; undefined where there is none. */
  alphaWithout: number | undefined;
}

export interface ReadStatistics {
  assignment: typeof assignments.$inferSelect;
  people: number;
  /** Everybody had cases and questions of their own. */
  parallel: boolean;
  /** Nothing is taken from anybody any more. */
  closed: boolean;
  items: readonly ReadItem[];
  reliability: Reliability;
  refitted: Refit | NoRefit;
  /** A day; undefined where nobody accepted refitted difficulties of this set. */
  acceptedAt: string | undefined;
}

/** How the tasks of an assignment worked, from everybody's first turn at it; undefined where there is none. */
export async function readStatistics(assignmentId: string, now: Date): Promise<ReadStatistics | undefined> {
  const found = await findAssignmentsSet(database(), assignmentId);
  if (!found) return undefined;
  const { assignment } = found;
  await settleTurns(assignment.organizationId, assignmentId);
  const results = await listFirstResults(database(), assignmentId);
  const responses = responsesOf(results.map(({ tasks }) => tasks));
  const accepted = await findAcceptedAt(database(), assignment);
  const reliability = reliabilityOf(responses.shares);
  return {
    assignment,
    people: results.length,
    parallel: assignment.rules.seeds === 'parallel',
    closed: now.getTime() >= takenUntil(assignment, await findMostExtraTime(database(), assignmentId)),
    items: await itemsOf(assignmentId, responses, reliability),
    reliability,
    refitted: responses.design.some(Number.isNaN)
      ? { why: 'too-few-answers' }
      : refit(responses.solved, responses.design),
    acceptedAt: accepted?.toISOString().slice(0, 10),
  };
}

async function itemsOf(
  assignmentId: string,
  { shares, places, kinds, seconds, choices }: SetResponses,
  { without }: Reliability,
): Promise<ReadItem[]> {
  const statistics = itemStatistics(shares);
  const counts = choiceCounts(shares, choices);
  return Promise.all(
    places.map(async (place, column): Promise<ReadItem> => {
      const kind = kinds[column] ?? 'question';
      const options = counts[column] ?? [];
      const own = statistics[column] as ItemStatistics;
      return {
        ...{ place, kind, options, statistics: own },
        flags: itemFlags(own, options),
        nameOf: kind === 'case' ? causeNames(options) : await optionNames(assignmentId, place),
        times: timeQuantiles(seconds[column] ?? new Float64Array()),
        alphaWithout: without[column]?.value,
      };
    }),
  );
}

function causeNames(options: readonly OptionCount[]): Record<string, string> {
  const names = options.map(({ option }) => [option, catalogue().causes.get(option)?.text.en.name ?? option]);
  return Object.fromEntries(names);
}

/** The words of a question's options as they were asked, of whoever was asked it first. */
async function optionNames(assignmentId: string, place: number): Promise<Record<string, string>> {
  const asked = await findAskedAt(database(), { assignmentId, place });
  const form = asked?.answer;
  if (form?.form !== 'choice' && form?.form !== 'several') return {};
  const said = (line: Line) => ('say' in line ? undefined : plainText(line));
  return Object.fromEntries(form.options.map(({ id, line }) => [id, said(line) ?? id]));
}
