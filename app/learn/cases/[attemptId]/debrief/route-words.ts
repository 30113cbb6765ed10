import type { StepView } from '@/app/_server/route-views';

export function minutesOf(steps: readonly StepView[]): number {
  return steps.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** What stands for a step of the expert. */
export function letterOf(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}
