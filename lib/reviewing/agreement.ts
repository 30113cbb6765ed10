import { quadraticKappa } from '../statistics/kappa';

/** Marks that two people gave for one answer, out of `steps`. */
export interface TwoMarks {
  first: number;
  second: number;
  steps: number;
}

export interface MarkersAgreement {
  answers: number;
  /** Answers for which both gave the same. */
  same: number;
  /** Quadratic-weighted; undefined where the marks are too few or all alike. */
  kappa: number | undefined;
  standardError: number | undefined;
}

/** How far two markers agree over answers to several questions: compared as shares, since questions have different marks. */
export function agreementOf(marks: readonly TwoMarks[]): MarkersAgreement {
  const { answers, kappa, ...rest } = quadraticKappa(
    marks.map(({ first, second, steps }) => [first / steps, second / steps] as const),
  );
  const same = marks.filter(({ first, second }) => first === second).length;
  return { answers, same, kappa, standardError: 'standardError' in rest ? rest.standardError : undefined };
}
