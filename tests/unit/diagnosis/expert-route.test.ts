import { expect, test } from 'vitest';
import { certify, rightRepair } from '@/lib/diagnosis/certificate';
import { SETTLED } from '@/lib/diagnosis/expert-route';
import { particlesOf } from '@/lib/diagnosis/particles';
import { byCause } from '@/lib/diagnosis/shares';
import { appliesTo } from '@/lib/faults/apply-cause';
import { canRun } from '@/lib/symptoms/complaint';
import { aRig, catalogue, causeOf } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const faults = [...catalogue.causes.values()].filter((cause) => appliesTo(aRig(), cause)).map(({ id }) => id);
const certified = new Map(
  faults.map((cause) => {
    const theCase = aCase({ cause });
    const particles = particlesOf(theCase, catalogue);
    return [cause, { theCase, particles, certificate: certify(theCase, catalogue, particles) }] as const;
  }),
);

function of(cause: string) {
  const found = certified.get(cause);
  if (!found) throw new Error(`No case of ${cause}`);
  return found;
}

test.each(faults)(
  'the route to %s makes each check once, with its own minutes, in conditions the vehicle reaches',
  (cause) => {
    const { theCase, certificate } = of(cause);
    const { steps, minutes } = certificate.route;
    const keys = steps.map(({ check, condition }) => `${check} ${condition}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(minutes).toBe(steps.reduce((sum, step) => sum + (catalogue.checks.get(step.check)?.minutes ?? 0), 0));
    for (const { condition } of steps) expect(canRun(theCase.points, condition)).toBe(true);
  },
);

test.each(faults)('a settled case of %s ends with the right repair and its cause believed most', (cause) => {
  const { particles, certificate } = of(cause);
  if (!certificate.settled) return;
  expect(certificate.right).toBeGreaterThanOrEqual(SETTLED);
  const [top] = [...byCause(particles, certificate.route.belief)].sort(([, a], [, b]) => b - a);
  expect(causeOf(top?.[0] ?? '').repairs[0]?.id).toBe(causeOf(cause).repairs[0]?.id);
});

test('nearly every cause can be settled when it is bad enough to be brought in', () => {
  const settled = faults.filter((cause) => of(cause).certificate.settled);
  expect(settled.length).toBeGreaterThan(0.9 * faults.length);
});

test.each(faults)('the route to %s measures the part itself where the vehicle lets one', (cause) => {
  const { theCase, certificate } = of(cause);
  if (!certificate.settled) return;
  const reachable = causeOf(cause).provenBy.filter(
    ({ check, condition }) =>
      canRun(theCase.points, condition) &&
      catalogue.checks.get(check)?.quantities.some(({ of }) => of.kind !== 'trace'),
  );
  const measured = certificate.route.steps.some((step) =>
    reachable.some(({ check, condition }) => step.check === check && step.condition === condition),
  );
  expect({ cause, steps: certificate.route.steps.map(({ check }) => check), measured }).toMatchObject({
    measured: reachable.length > 0,
  });
});

test('the same case gives the same certificate', () => {
  const again = certify(aCase({ cause: 'injector-leakage-high' }), catalogue);
  expect(JSON.stringify(again)).toBe(JSON.stringify(of('injector-leakage-high').certificate));
});

test('the repair of two causes is both repairs, whichever is named first', () => {
  const truth = (cause: string, also: string) => ({
    truth: { cause, severity: 1, also: { cause: also, severity: 1 } },
  });
  const one = rightRepair(truth('main-filter-plugged', 'relief-valve-leaking'), catalogue);
  expect(one).toBe(rightRepair(truth('relief-valve-leaking', 'main-filter-plugged'), catalogue));
  expect(one).toBe('replace-main-filter + replace-relief-valve');
});
