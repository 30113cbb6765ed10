import { conditionsOf } from '../../../cases/perform-check';
import type { Catalogue } from '../../../catalogue';
import { findLimit } from '../../../checks/limit';
import type { RandomStream } from '../../../random';
import type { ConditionId } from '../../../rig/condition';
import type { Draw } from '../../kind';
import { checksOn } from '../../shared/checks-on';
import { drawAgain } from '../../shared/draw-again';
import { isNumber } from '../../shared/limited';
import { dayOf, type RigDay } from '../../shared/rig-day';
import { shuffled } from '../../shared/shuffled-options';
import { type Assessing, assess, type Fit, type Flaw } from './assess';
import { type Hook, hooksFor, type Task } from './hook';
import type { WhichToolRanges } from './ranges';

export interface Flawed extends Hook {
  flaw: Flaw;
}

export interface Drawn {
  task: Task;
  right: Hook & { fit: Fit };
  wrong: readonly Flawed[];
}

/** Wrong hook-ups beside the right one. */
const WRONG = 3;
/** Flaws that hurt somebody or break something. */
const DANGERS: readonly Flaw['flaw'][] = ['jet', 'destroyed', 'may-catch', 'may-be-destroyed'];

export function isDangerous({ flaw }: Flaw): boolean {
  return DANGERS.includes(flaw);
}

/** One hook-up that nothing speaks against, and some that something computed does. */
export function drawHooks(draw: Draw<WhichToolRanges>, topic: string | undefined, dangerous: boolean): Drawn {
  const { rig, ranges, catalogue, stream } = draw;
  return drawAgain(stream, (tried) => {
    const day = dayOf(Math.floor(tried('day').between(0, ranges.days)), rig, catalogue);
    const tasks = tasksOn(day, catalogue, topic);
    if (tasks.length === 0) return undefined;
    const task = tried('check').pick(tasks);
    const { fits, flawed } = assessAll(task, { catalogue, ranges });
    const first = task.check.instruments.find((id) => fits.some(({ instrument }) => instrument.id === id));
    const wrong = drawWrong(tried('wrong'), flawed);
    if (first === undefined || wrong.length < WRONG) return undefined;
    if (dangerous && !wrong.some(({ flaw }) => isDangerous(flaw))) return undefined;
    return { task, right: tried('right').pick(fits.filter(({ instrument }) => instrument.id === first)), wrong };
  });
}

function tasksOn(day: RigDay, catalogue: Catalogue, topic: string | undefined): Task[] {
  return checksOn(day.rig, catalogue, topic).flatMap((check) => {
    const quantity = check.quantities.find(
      (one) => isNumber(one) && check.conditions.some((condition) => findLimit(day.rig, check.id, condition, one.id)),
    );
    return quantity ? [{ day, check, quantity }] : [];
  });
}

interface Assessed {
  fits: readonly (Hook & { fit: Fit })[];
  flawed: readonly Flawed[];
}

const known = new WeakMap<RigDay, Map<string, Assessed>>();

/** The same for every question on a rig's day, and what takes longest. */
function assessAll(task: Task, assessing: Assessing): Assessed {
  const ofDay = known.get(task.day) ?? new Map<string, Assessed>();
  known.set(task.day, ofDay);
  const name = `${task.check.id} ${JSON.stringify(assessing.ranges)}`;
  const assessed = ofDay.get(name) ?? assessHooks(task, assessing);
  ofDay.set(name, assessed);
  return assessed;
}

function assessHooks(task: Task, assessing: Assessing): Assessed {
  const all = hooksFor(task, assessing.catalogue).map((hook) => ({ hook, found: assess(task, hook, assessing) }));
  return {
    fits: all.flatMap(({ hook, found }) => (found && found.flaw === undefined ? [{ ...hook, fit: found }] : [])),
    flawed: all
      .flatMap(({ hook, found }) => (found && found.flaw !== undefined ? [{ ...hook, flaw: found }] : []))
      .filter((hook) => isTempting(task, hook)),
  };
}

/** Not more than one thing wrong that is plain to see. */
function isTempting({ check }: Task, { instrument, at, condition, flaw }: Flawed): boolean {
  const own = check.instruments.includes(instrument.id);
  if (flaw.flaw === 'no-line') return own && turns(condition);
  return conditionsOf(check).includes(condition) && (own || at.check === check);
}

function turns(condition: ConditionId): boolean {
  return condition !== 'key-on' && condition !== 'key-off';
}

/** As many different flaws as there are before one comes twice, and no two that differ in the instrument alone. */
function drawWrong(stream: RandomStream, flawed: readonly Flawed[]): Flawed[] {
  const places = new Set<string>();
  const seen = new Map<string, number>();
  const ranked = shuffled(stream, flawed).flatMap((hook) => {
    const { flaw } = hook.flaw;
    const place = `${flaw} ${hook.at.check.id} ${isOfInstrument(flaw) ? hook.instrument.id : hook.condition}`;
    if (places.has(place)) return [];
    places.add(place);
    const before = seen.get(flaw) ?? 0;
    seen.set(flaw, before + 1);
    return [{ hook, before }];
  });
  const kinds = shuffled(stream, [...seen.keys()]);
  const order = (one: (typeof ranked)[number]) => one.before * kinds.length + kinds.indexOf(one.hook.flaw.flaw);
  return ranked
    .sort((one, other) => order(one) - order(other))
    .slice(0, WRONG)
    .map(({ hook }) => hook);
}

/** Flaws that another instrument in the same place would not have. */
function isOfInstrument(flaw: Flaw['flaw']): boolean {
  return flaw !== 'no-line' && flaw !== 'wrong-port' && flaw !== 'jet';
}
