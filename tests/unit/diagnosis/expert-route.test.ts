import { expect, test } from 'vitest';
import { beliefFromWorkOrder } from '@/lib/diagnosis/belief';
import { expertRoute, type RouteStep } from '@/lib/diagnosis/expert-route';
import { simulateParticles } from '@/lib/diagnosis/particles';
import { appliesTo } from '@/lib/faults/apply-cause';
import { canRun } from '@/lib/symptoms/complaint';
import { aRig, catalogue, causeOf } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const faults = [...catalogue.causes.values()].filter((cause) => appliesTo(aRig(), cause)).map(({ id }) => id);
const cases = new Map(faults.map((cause) => [cause, aCase({ cause })]));

function routeOf(cause: string): RouteStep[] {
  const theCase = cases.get(cause) ?? aCase({ cause });
  const { rig, setting, workOrder } = theCase;
  const particles = simulateParticles(rig, setting, catalogue);
  const start = beliefFromWorkOrder(particles, workOrder);
  const { provenBy } = causeOf(cause);
  return expertRoute(rig, catalogue.checks, particles, start, theCase, workOrder.codes.length, provenBy);
}

const routes = new Map(faults.map((cause) => [cause, routeOf(cause)]));

test.each(faults)('the route to %s measures the part itself before the call', (cause) => {
  const { provenBy } = causeOf(cause);
  const reachable = provenBy.filter(({ condition }) => canRun((cases.get(cause) ?? aCase()).points, condition));
  const route = routes.get(cause) ?? [];
  const measured = route.some((step) =>
    reachable.some(({ check, condition }) => step.check === check && step.condition === condition),
  );
  expect({ route: route.map(({ check }) => check), measured }).toMatchObject({ measured: reachable.length > 0 });
});

test.each(faults)('the route to %s makes each check once, with its own minutes', (cause) => {
  const route = routes.get(cause) ?? [];
  const keys = route.map(({ check, condition }) => `${check} ${condition}`);
  expect(new Set(keys).size).toBe(keys.length);
  for (const { check, minutes } of route) expect(minutes).toBe(catalogue.checks.get(check)?.minutes);
});

test('nothing is run that the engine cannot do', () => {
  const points = cases.get('relief-valve-leaking')?.points;
  for (const { condition } of routes.get('relief-valve-leaking') ?? []) {
    expect(points && canRun(points, condition)).toBe(true);
  }
});

test('the same case gives the same route', () => {
  expect(routeOf('injector-leakage-high')).toEqual(routes.get('injector-leakage-high'));
});

test('where the belief is settled already, the part is measured and that is all', () => {
  const theCase = aCase({ cause: 'inlet-screen-plugged' });
  const { rig, setting, workOrder } = theCase;
  const particles = simulateParticles(rig, setting, catalogue);
  const certain = Float64Array.from(particles, ({ cause }) => (cause === 'inlet-screen-plugged' ? 0.2 : 0));
  const { provenBy } = causeOf('inlet-screen-plugged');
  const route = expertRoute(rig, catalogue.checks, particles, certain, theCase, workOrder.codes.length, provenBy);
  expect(route).toEqual([{ check: 'screen-drop', condition: 'full-load', minutes: 20 }]);
});
