import { listAssigned, listAssignedClasses } from '@/db/queries/assigned-people';
import { findAssignment, type GivenSet } from '@/db/queries/assignments';
import { listClassClocks } from '@/db/queries/classes';
import { listLearners } from '@/db/queries/gradebook';
import { listSets } from '@/db/queries/sets';
import { localTimeOf } from '@/lib/assignments/local-time';
import type { AssignmentRules } from '@/lib/assignments/rules';
import { STANDARD_RUBRIC } from '@/lib/grading/rubric';
import { taskCount } from '@/lib/sets/set-body';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { settingsFor } from '../organization-settings';
import { organizationOf, type SignedInPermit } from '../permit';
import { setReaderFor } from '../sets/set-reader';
import { MOST_PEOPLE } from './change-assignment';

const LISTED = 500;

/** What an assignment can be made from, and what its form starts with. */
export interface FormChoices {
  sets: { id: string; title: string; tasks: number }[];
  classes: { id: string; name: string; timeZone: string }[];
  people: { id: string; name: string }[];
  timeZones: string[];
  first: FirstValues;
}

export interface FirstValues {
  setId: string;
  title: string;
  classIds: string[];
  personIds: string[];
  rules: AssignmentRules;
}

/** `like` names an assignment of the same organisation that is given again. */
export async function formChoices(
  permit: SignedInPermit,
  asked: { setId?: string | undefined; like?: string | undefined },
  now: Date,
): Promise<FormChoices> {
  const organizationId = organizationOf(permit);
  const settings = await settingsFor(permit.session);
  const [sets, classes, people] = await Promise.all([
    listSets(database(), organizationId, setReaderFor(permit.session.actor), { limit: LISTED }),
    listClassClocks(database(), organizationId, LISTED),
    listLearners(database(), organizationId, LISTED),
  ]);
  const clocks = classes.map(({ id, name, timeZone }) => ({ id, name, timeZone: timeZone ?? settings.timeZone }));
  const like = asked.like ? await findAssignment(database(), { assignmentId: asked.like, organizationId }) : undefined;
  return {
    sets: sets.map(({ id, newest }) => ({ id, title: newest.body.title, tasks: taskCount(newest.body) })),
    classes: clocks,
    people,
    timeZones: [
      ...new Set([
        settings.timeZone,
        ...clocks.map(({ timeZone }) => timeZone),
        ...(like ? [like.rules.timeZone] : []),
      ]),
    ],
    first: like
      ? await again(like)
      : fresh(
          asked.setId ?? '',
          sets.find(({ id }) => id === asked.setId)?.newest.body.title ?? '',
          settings.timeZone,
          now,
        ),
  };
}

/** The same once more: dates are to be chosen anew. */
async function again(like: GivenSet): Promise<FirstValues> {
  const { id, organizationId, setId, title, rules } = like;
  const people = await listAssigned(database(), { assignmentId: id, organizationId }, MOST_PEOPLE);
  const classes = await listAssignedClasses(database(), id);
  return {
    setId,
    title,
    classIds: classes.map((one) => one.id),
    personIds: people.filter(({ named }) => named).map((one) => one.id),
    rules: { ...rules, opens: '', closes: '' },
  };
}

const WEEK_MS = 7 * 24 * 3_600_000;

function fresh(setId: string, title: string, timeZone: string, now: Date): FirstValues {
  // The next full hour, and a week of it.
  const opens = Math.ceil(now.getTime() / 3_600_000) * 3_600_000;
  return {
    setId,
    title,
    classIds: [],
    personIds: [],
    rules: {
      opens: localTimeOf(opens, timeZone),
      closes: localTimeOf(opens + WEEK_MS, timeZone),
      timeZone,
      turns: 1,
      seeds: 'parallel',
      mode: 'assessed',
      minutes: null,
      late: 'refused',
      weights: null,
      anonymous: false,
      secondMarker: false,
    },
  };
}

/** What each part of a case weighs where nothing else is asked for. */
export function usualWeights() {
  const rubric = catalogue().rubrics.get(STANDARD_RUBRIC);
  if (!rubric) throw new Error('The standard rubric is gone');
  return rubric.parts;
}
