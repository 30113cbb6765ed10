import { comparisons, verdictOf } from '@/lib/checks/verdict';
import type { Cause } from '@/lib/faults/cause';
import type { CallAct, FindingAct, StoredAct } from '@/lib/grading/acts';
import { restoringNeeded } from '@/lib/grading/grade-restoring';
import type { RandomStream } from '@/lib/random';
import type { Topic } from '@/lib/topics/topic';
import { causesIn } from '@/lib/topics/topics-of';
import type { Job } from '../policies/job';
import { Notebook } from '../policies/notebook';
import { soundCall } from '../policies/sound-call';
import { anotherLine, areasTurnedRound } from '../policies/wrong-reasons';

/** A level of work, 0…4, on each topic. */
export type LevelOf = (topic: string) => number;

/** Share of what there is to do right that somebody does right whose work is of a level: the middles of the rubric's bands. */
const SHARES = [0.12, 0.32, 0.5, 0.7, 1];

/**
 * The acts of somebody whose work is of these levels. They take the expert's readings. Of the findings on a topic's checks as
 * many elements are right (verdict; line of the sheet, comparison, areas) as the level says; the cause is named from the middle
 * level of its topic on, and otherwise another of the same area; what every case practises (putting right, proving, keeping to
 * the way) is done as the level of its own topic says. Findings on no topic's checks are of the level of reasoning.
 */
export function workOfLevel(job: Job, levelOf: LevelOf, draw: RandomStream): StoredAct[] {
  const named = namedRight(job, levelOf);
  const qualities = qualitiesOf(job, levelOf, named, draw);
  const notebook = new Notebook(job);
  let at = 0;
  for (const step of job.certificate.route.steps) {
    notebook.judge(notebook.read(step), (right) => ofQuality(job, right, qualities[at++] ?? MOST));
  }
  const detours = detoursOf(job, levelOf, qualities);
  for (const step of job.certificate.route.steps.slice(0, 1))
    for (let times = 0; times < detours.count; times++) notebook.read(step);
  const right = soundCall(job, notebook, job.certificate.route.belief);
  const called = named ? right : another(job, right);
  const proven = detours.proves ? called : unproven(job, called);
  return notebook.call({
    ...proven,
    restored: restoredAt(levelOf(topicWith(job, 'practice')), job, notebook, condemns(job, called)),
  });
}

/** Elements of a finding that may be right: verdict counting three, and line, comparison and areas one each. */
const MOST = 6;

/** A finding with so many elements right. */
function ofQuality(job: Job, right: FindingAct, quality: number): FindingAct {
  const line = anotherLine(job, right);
  const areas = areasTurnedRound(right);
  const comparison = comparisons.find((other) => verdictOf(other) !== right.verdict) ?? right.comparison;
  const misjudged = { ...right, comparison, verdict: verdictOf(comparison), entered: misread(right) };
  switch (quality) {
    case 6:
      return right;
    case 5:
      return { ...right, ...areas };
    case 4:
      return { ...right, ...areas, ...line };
    case 3:
      return { ...right, ...areas, ...line, comparison };
    case 2:
      return misjudged;
    case 1:
      return { ...misjudged, ...line };
    default:
      return { ...misjudged, ...areas, ...line };
  }
}

function misread({ entered }: FindingAct): FindingAct['entered'] {
  return entered && { ...entered, value: Number((entered.value * 1.4 + 1).toPrecision(2)) };
}

/** Verdicts and reasons together, and the call, as the standard rubric weighs them. */
const [LOOKED, CALLED] = [50, 30];
/** Of a call that names another cause of the same area and still proves it. */
const CALLED_BESIDE = 0.35;

/** Whether the cause is named: by who does everything right. Below, good looking may still end in the part beside. */
function namedRight(job: Job, levelOf: LevelOf): boolean {
  return levelOf(causeTopic(job)?.id ?? topicWith(job, 'reasons')) === SHARES.length - 1;
}

/** How many elements are right of each finding, in the order of the expert's route. */
function qualitiesOf(job: Job, levelOf: LevelOf, named: boolean, draw: RandomStream): number[] {
  const topics = findingTopics(job);
  const own = causeTopic(job);
  const whole = own !== undefined && !topics.includes(own.id);
  const share = (topic: string) => {
    const wanted = SHARES[levelOf(topic)] ?? 1;
    if (topic !== own?.id) return wanted;
    const called = named ? 1 : CALLED_BESIDE;
    return (wanted * (LOOKED + CALLED) - CALLED * called) / LOOKED;
  };
  const byTopic = new Map<string, number[]>();
  topics.forEach((topic, place) => {
    const key = whole ? (own?.id ?? topic) : topic;
    byTopic.set(key, [...(byTopic.get(key) ?? []), place]);
  });
  const qualities: number[] = [];
  for (const [topic, places] of byTopic) {
    const exact = Math.min(1, Math.max(0, share(topic))) * MOST * places.length;
    const total = Math.floor(exact + draw.next());
    for (const [place, elements] of spread(shuffled(places, draw), total)) qualities[place] = elements;
  }
  return qualities;
}

/** Elements over findings: verdicts come before reasons, for one may judge right without being able to say why. */
function spread(places: readonly number[], total: number): [place: number, elements: number][] {
  const verdicts = Math.min(places.length, Math.floor(total / VERDICT));
  const reasons = total - verdicts * VERDICT;
  return places.map((place, index) => {
    if (index >= verdicts) return [place, verdicts < places.length && index === verdicts ? reasons : 0];
    if (verdicts < places.length) return [place, VERDICT];
    return [place, VERDICT + Math.floor((reasons + places.length - 1 - index) / places.length)];
  });
}

/** Elements that a verdict counts for. */
const VERDICT = 3;

/** What is left of the level of reasoning for the way and the proof, once the reasons of the findings are as they are. */
function detoursOf(job: Job, levelOf: LevelOf, qualities: readonly number[]): { proves: boolean; count: number } {
  const [reasons, way, proof] = [25, 10, 6];
  const right = qualities.map((quality) => (quality >= 3 ? (quality - 3) / 3 : quality / 3));
  const mean = right.reduce((sum, one) => sum + one, 0) / Math.max(1, right.length);
  const wanted = (SHARES[levelOf(topicWith(job, 'reasons'))] ?? 1) * (reasons + way + proof) - reasons * mean;
  const options = [
    { proves: true, count: 0, earns: way + proof },
    { proves: false, count: 0, earns: way },
    { proves: true, count: DETOURS, earns: 0.3 * way + proof },
    { proves: false, count: DETOURS, earns: 0.3 * way },
  ];
  const off = (earns: number) => Math.abs(earns - wanted);
  return options.reduce((best, option) => (off(option.earns) < off(best.earns) ? option : best));
}

/** Times that something already read is read again. */
const DETOURS = 6;

/** What is put right: each harmful step costs a fifth, and each that is left out a tenth. */
function restoredAt(level: number, job: Job, notebook: Notebook, condemns: boolean): string[] {
  const needed = restoringNeeded(notebook.readings, job.catalogue);
  const harmful = [...job.catalogue.restoring.values()].filter(({ wrong }) => wrong).map(({ id }) => id);
  let tenths = Math.round(10 * (1 - (SHARES[level] ?? 1))) - (condemns ? 4 : 0);
  const steps = [...needed];
  for (const step of harmful)
    if (tenths >= 2) {
      steps.push(step);
      tenths -= 2;
    }
  return steps.slice(Math.max(0, Math.min(needed.length, tenths)));
}

/** Another cause of the same topic, or none that has to do with the fuel system, with its own repair. */
function another(job: Job, { also: _, ...right }: CallAct): CallAct {
  const { theCase, catalogue } = job;
  const wrong = causesIn(theCase, catalogue).map(({ id }) => id);
  const areas = causeTopic(job)?.areas ?? [];
  const others = [...catalogue.causes.values()].filter(({ id, repairs }) => !wrong.includes(id) && repairs.length > 0);
  const cause: Cause | undefined =
    others.find(({ area }) => areas.includes(area)) ?? others.find(({ element }) => element === null) ?? others[0];
  return { ...right, cause: cause?.id ?? right.cause, repair: cause?.repairs[0]?.id ?? right.repair };
}

/** Whether a good part is replaced. */
function condemns({ theCase, catalogue }: Job, { cause, repair }: CallAct): boolean {
  const mending = causesIn(theCase, catalogue).flatMap(({ repairs }) => repairs.map(({ id }) => id));
  return !mending.includes(repair) && (catalogue.causes.get(cause)?.element ?? null) !== null;
}

/** The look over the vehicle proves nothing. */
function unproven({ theCase, catalogue }: Job, call: CallAct): CallAct {
  const check = [...catalogue.checks.values()].find(({ id, ports }) => id === 'look-over' && ports[theCase.rig.id]);
  const condition = check?.conditions[0];
  return check && condition ? { ...call, proof: { check: check.id, condition } } : call;
}

/** The topic that each finding of the expert's route belongs to. */
function findingTopics(job: Job): string[] {
  const notebook = new Notebook(job);
  const found: string[] = [];
  for (const step of job.certificate.route.steps)
    notebook.judge(notebook.read(step), (right) => {
      found.push(topicOfCheck(job, step.check));
      return right;
    });
  return found;
}

function topicOfCheck({ catalogue }: Job, check: string): string {
  const own = [...catalogue.topics.values()].find(
    ({ checks, everyCase }) => everyCase.length === 0 && checks.includes(check),
  );
  return own?.id ?? topicWith({ catalogue }, 'reasons');
}

function causeTopic({ theCase, catalogue }: Job): Topic | undefined {
  const [cause] = causesIn(theCase, catalogue);
  return cause && [...catalogue.topics.values()].find(({ areas }) => areas.includes(cause.area));
}

function topicWith({ catalogue }: Pick<Job, 'catalogue'>, part: 'practice' | 'reasons'): string {
  return [...catalogue.topics.values()].find(({ everyCase }) => everyCase.includes(part))?.id ?? '';
}

function shuffled<T>(items: readonly T[], draw: RandomStream): T[] {
  return items
    .map((item) => ({ item, at: draw.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}
