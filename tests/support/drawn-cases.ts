import { expect } from 'vitest';
import type { Case } from '@/lib/cases/case';
import { type CaseSpec, formatCaseCode, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { complaintOf } from '@/lib/symptoms/complaint';
import { troubleCodes } from '@/lib/symptoms/trouble-codes';
import { catalogue, causeOf } from './bench-rig';

const rigs = [...catalogue.rigs.keys()];

/** The spec of the n-th seed of a word: over all rigs in turn, plain and hardest. */
export function specOf(word: string, n: number): CaseSpec {
  const rig = rigs[n % rigs.length] ?? '';
  const hardest = Math.floor(n / rigs.length) % 2 === 1;
  return { rig, seed: seedFromWord(`${word}-${n}`), ...(hardest && { hardest }) };
}

/** Draws cases and holds each to what every case promises. Returns what they complain of, and those that did not solve. */
export function drawCases(word: string, count: number): { complaints: string[]; unsolved: string[] } {
  const complaints = new Set<string>();
  const unsolved: string[] = [];
  for (let n = 0; n < count; n++) {
    const theCase = drawn(specOf(word, n), unsolved);
    if (!theCase) continue;
    expectSound(theCase);
    complaints.add(theCase.workOrder.complaint);
  }
  return { complaints: [...complaints].sort(), unsolved };
}

function drawn(spec: CaseSpec, unsolved: string[]): Case | undefined {
  try {
    return caseFromSeed(spec, catalogue);
  } catch (error) {
    unsolved.push(`${formatCaseCode(spec)}: ${error}`);
    return undefined;
  }
}

/** Complaint and codes follow from the state, and there is one true cause, or two that have nothing to do with each other. */
function expectSound({ code, rig, points, truth, workOrder, spec }: Case): void {
  const codes = troubleCodes(rig, points);
  const computed = complaintOf(rig, points, codes);
  expect({ code, codes: workOrder.codes }).toEqual({ code, codes });
  if (truth.cause === 'no-fuel-fault')
    expect({ code, truth, computed, codes }).toEqual({
      code,
      truth: { cause: truth.cause, severity: truth.severity },
      computed: undefined,
      codes: [],
    });
  else expect({ code, truth, complaint: workOrder.complaint }).toEqual({ code, truth, complaint: computed });
  if (!truth.also) return;
  const [first, second] = [causeOf(truth.cause), causeOf(truth.also.cause)];
  expect({
    code,
    hardest: spec.hardest,
    element: first.element !== second.element,
    area: first.area !== second.area,
  }).toEqual({
    code,
    hardest: true,
    element: true,
    area: true,
  });
}
