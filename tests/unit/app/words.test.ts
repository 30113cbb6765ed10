import { expect, test } from 'vitest';
import { checkGroups } from '@/app/_server/check-groups';
import { difficulties, levels } from '@/app/learn/random-choices';
import { loadCatalogue } from '@/content/load';
import messages from '@/content/messages/en.json';
import { areas } from '@/lib/areas';
import { comparisons, verdicts } from '@/lib/checks/verdict';
import { parts } from '@/lib/grading/grade';
import { noteCodes } from '@/lib/grading/note-codes';
import { conditionIds } from '@/lib/rig/condition';
import { traceLineIds } from '@/lib/rig/traces/trace';
import { complaintIds, STORIES_PER_COMPLAINT, vehicleIds } from '@/lib/symptoms/work-order';
import { wishNames } from '@/lib/wishes/wishes';

const { checks } = loadCatalogue();
const stories = complaintIds.flatMap((complaint) =>
  Array.from({ length: STORIES_PER_COMPLAINT }, (_, i) => `${complaint}-${i + 1}`),
);

test.each<[string, readonly string[], Record<string, unknown>]>([
  ['caution of a check', [...checks.values()].flatMap(({ cautions }) => cautions), messages.cautions],
  ['complaint', complaintIds, messages.case.complaints],
  ['story', stories, messages.case.stories],
  ['vehicle', vehicleIds, messages.case.vehicles],
  ['condition', conditionIds, messages.conditions],
  ['condition, in short', conditionIds, messages.conditionsShort],
  ['area', areas, messages.areas],
  ['verdict', verdicts, messages.verdicts],
  ['comparison', comparisons, messages.comparisons],
  ['part of the grade', parts, messages.debrief.parts],
  ['reason for points', noteCodes, messages.debrief.notes],
  ['comparison of what an eye sees', comparisons, messages.comparisons.grade],
  ['area of work', checkGroups, messages.hookUp.groups],
  ['line of a chart', traceLineIds, messages.gauges.trace.lines],
  ['line of a chart, in full', traceLineIds, messages.gauges.trace.long],
  ['level', levels, messages.learn.levels],
  ['difficulty', difficulties, messages.learn.difficulties],
  ['wish that is not met', wishNames.map((name) => `unmet-${name}`), messages.problems],
])('every %s has words', (_, ids, words) => {
  expect(ids.length).toBeGreaterThan(0);
  expect(ids.filter((id) => !(id in words))).toEqual([]);
});
