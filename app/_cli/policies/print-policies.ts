import { parts } from '@/lib/grading/grade';
import type { Bin, Calibration } from './calibrate';
import type { PolicyScore } from './score-policies';

export function printScores(scores: readonly PolicyScore[]): string {
  const head = ['policy', 'cases', 'mean', 'sd', 'solved', 'minutes', 'score', ...parts];
  const rows = scores.map(({ policy, cases, mean, sd, solved, minutes, score, parts: shares }) => [
    policy,
    String(cases),
    mean.toFixed(1),
    sd.toFixed(1),
    percent(solved),
    minutes.toFixed(0),
    score.toFixed(2),
    ...parts.map((part) => percent(shares[part])),
  ]);
  return [table(head, rows), ...scores.map(lossLine)].join('\n');
}

const REASONS = 4;

function lossLine({ policy, lost }: PolicyScore): string {
  const reasons = lost.slice(0, REASONS).map(({ code, points }) => `${code} ${points.toFixed(1)}`);
  return `${policy} loses most by ${reasons.join(', ')}`;
}

export function printCalibration({ cases, every, leading }: Calibration): string {
  return [
    `Belief over ${cases} cases; every cause, expected calibration error ${every.error.toFixed(4)}`,
    table(HEAD, every.bins.map(binRow)),
    `The cause most believed, expected calibration error ${leading.error.toFixed(4)}`,
    table(HEAD, leading.bins.map(binRow)),
  ].join('\n');
}

const HEAD = ['believed', 'beliefs', 'mean', 'true'];

function binRow({ from, count, believed, true: right }: Bin): string[] {
  const band = `${Math.round(from * 100)}–${Math.round(from * 100) + 10} %`;
  return [band, String(count), count > 0 ? percent(believed) : '', count > 0 ? percent(right) : ''];
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function table(head: readonly string[], rows: readonly string[][]): string {
  const widths = head.map((name, column) => Math.max(name.length, ...rows.map((row) => row[column]?.length ?? 0)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0)))
      .join('  ');
  return [head, ...rows].map(line).join('\n');
}
