import type { Case } from '../cases/case';
import { gaugeFor, performCheck } from '../cases/perform-check';
import type { Catalogue } from '../catalogue';
import type { Check, Quantity } from '../checks/check';
import { compareMeasured, measured } from '../checks/expected';
import { findLimit, limitBounds } from '../checks/limit';
import type { Shown } from '../checks/shown';
import { type Comparison, type Verdict, verdictOf } from '../checks/verdict';
import type { RouteStep } from '../diagnosis/next-check';
import type { Gauge } from '../gauges/gauge';
import type { ConditionId } from '../rig/condition';
import type { LimitLine } from '../rig/rig';

/** One value of a sheet: what an instrument showed, with what is to be said of it. */
export interface SheetRow {
  check: Check;
  condition: ConditionId;
  instrument: Gauge;
  quantity: Quantity;
  shown: Shown;
  /** For the key: the line that applies, how the reading stands to it, and whether an expert looked here. */
  limit: LimitLine | undefined;
  comparison: Comparison | undefined;
  verdict: Verdict | undefined;
  onRoute: boolean;
}

/** Checks on a sheet: as many as fit on one, with room to write. */
export const MOST_CHECKS = 9;

/**
 * The readings that a case on paper gives: all that an expert would take, and others that are quickly taken, in the order of
 * their names, so that the order tells nothing. Traces are drawn on screens alone and are left out.
 *
 * @param route  The expert's.
 */
export function sheetRows(theCase: Case, catalogue: Catalogue, route: readonly RouteStep[]): SheetRow[] {
  const taken = route.flatMap((step) => hookUp(theCase, catalogue, step, true));
  const others = [...catalogue.checks.values()]
    .filter(({ id, ports }) => ports[theCase.rig.id] && !route.some(({ check }) => check === id))
    .sort((a, b) => a.minutes - b.minutes || (a.id < b.id ? -1 : 1))
    .map((check) => usual(theCase, catalogue, check));
  const rows = [...taken];
  const counted = () => new Set(rows.map(({ check, condition }) => `${check.id} ${condition}`)).size;
  for (const more of others) if (counted() < MOST_CHECKS) rows.push(...more);
  return rows.sort((a, b) => order(a.check.text.en.name, b.check.text.en.name) || order(a.condition, b.condition));
}

/** A check in the first condition that it can be made in, with the procedure's own instrument. */
function usual(theCase: Case, catalogue: Catalogue, check: Check): SheetRow[] {
  for (const condition of check.conditions)
    for (const instrument of check.instruments) {
      const rows = hookUp(theCase, catalogue, { check: check.id, condition, instrument }, false);
      if (rows.length > 0) return rows;
    }
  return [];
}

function hookUp(theCase: Case, catalogue: Catalogue, step: Omit<RouteStep, 'minutes'>, onRoute: boolean): SheetRow[] {
  const performed = performCheck(theCase, catalogue, step);
  const check = catalogue.checks.get(step.check);
  const instrument = catalogue.gauges.get(step.instrument);
  if ('error' in performed || !check || !instrument) return [];
  return performed.shown.flatMap((shown): SheetRow[] => {
    const quantity = check.quantities.find(({ id }) => id === shown.quantity);
    if (!quantity || quantity.of.kind === 'trace' || !('kind' in shown)) return [];
    const limit = findLimit(theCase.rig, check.id, step.condition, quantity.id);
    const value = measured(shown, gaugeFor(instrument, quantity));
    const comparison = limit && value && compareMeasured(value, limitBounds(limit));
    return [
      {
        ...{ check, condition: step.condition, instrument, quantity, shown, limit, comparison, onRoute },
        verdict: comparison && verdictOf(comparison),
      },
    ];
  });
}

function order(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
