import type { Decision } from '@/lib/competency/decision';
import type { BoardCell } from '@/lib/readiness/board';
import type { SafetyStanding } from '@/lib/readiness/intake-outcome';
import type { Missing } from '@/lib/readiness/missing';
import { shownChance } from '../shown-chance';

export interface BoardWords {
  grid: string;
  person: string;
  decision: string;
  signed: string;
  safety: string;
  decisions: Readonly<Record<Decision, string>>;
  missings: Readonly<Record<Missing, string>>;
  safeties: Readonly<Record<SafetyStanding['code'], string>>;
  notSigned: string;
  /** With `{days}`. */
  signedFor: string;
  changes: string;
  name: string;
  class: string;
  allClasses: string;
  anyDecision: string;
  soon: string;
  anySoon: string;
  /** With `{days}`. */
  within: string;
  sort: string;
  byName: string;
  byDecision: string;
  bySoon: string;
  bySigned: string;
  down: string;
  numbers: string;
  /** With `{count}`. */
  shown: string;
  nobody: string;
  /** With `{name}`, `{topic}`, `{decision}`, `{chance}`, `{responses}`, `{cases}`. */
  detail: string;
  hint: string;
}

export function daysWord(words: string, days: number): string {
  return words.replace('{days}', String(days));
}

/** What is behind a cell, in a sentence. */
export function detailOf(words: BoardWords, name: string, topic: string, cell: BoardCell): string {
  const filled: Record<string, string> = {
    name,
    topic,
    decision: cell.missing ? words.missings[cell.missing] : words.decisions.ready,
    chance: shownChance(cell.chance),
    responses: String(cell.responses),
    cases: String(cell.cases),
  };
  const said = words.detail.replace(/\{(\w+)\}/g, (whole, key: string) => filled[key] ?? whole);
  return cell.changesIn === null ? said : `${said} ${daysWord(words.changes, cell.changesIn)}.`;
}
