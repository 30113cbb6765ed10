import { type CsvCell, csvHead, csvLines } from '@/app/_server/csv';
import type { Shown } from '@/lib/checks/shown';
import type { Answer, FindingAct } from '@/lib/grading/acts';
import { rowsOfSitting } from './csv-sittings';
import type { HeldOn } from './everything-held-on';
import type { HeldAct, HeldAttempt } from './held-attempt';

/** Columns of the file of acts, in their order. Codes are those of the content and of case files. */
export const actColumns = [
  'organization',
  'attempt',
  'case',
  'act',
  'at',
  'kind',
  'check',
  'condition',
  'instrument',
  'quantity',
  'value',
  'unit',
  'verdict',
  'comparison',
  'limit',
  'clears',
  'suspects',
  'words',
  'cause',
  'repair',
  'restored',
  'points',
  'total',
  'sitting',
  'place',
  'question',
  'topic',
  'answer',
  'steps',
] as const;
export type Row = Partial<Record<(typeof actColumns)[number], CsvCell>>;

/**
 * Everything a person did in their attempts and sittings as CSV, piece by piece: a line an act, an answer or a mark, or one
 * for each thing that an instrument showed.
 */
export async function* csvExport({ attempts, sittings }: HeldOn): AsyncGenerator<string> {
  yield csvHead(actColumns);
  for await (const attempt of attempts()) yield csvLines(rowsOf(attempt).map(cells));
  for await (const sitting of sittings()) yield csvLines(rowsOfSitting(sitting).map(cells));
}

function cells(row: Row): CsvCell[] {
  return actColumns.map((column) => row[column] ?? null);
}

function rowsOf(attempt: HeldAttempt): Row[] {
  const of = { organization: attempt.organizationId, attempt: attempt.attemptId, case: attempt.caseCode };
  const rows = [
    { kind: 'start', at: attempt.startedAt.toISOString() },
    ...attempt.acts.flatMap((act) => withPoints(rowsOfAct(act), pointsOf(attempt, act))),
    ...rowsOfCall(attempt),
  ];
  return rows.map((row) => ({ ...of, ...row }));
}

function rowsOfAct(act: HeldAct): Row[] {
  const common = { act: act.seq, at: act.at.toISOString(), kind: act.kind };
  if (act.kind === 'hint') return [{ ...common, ...act.next }];
  if (act.kind === 'finding') return [{ ...common, ...findingCells(act) }];
  const { check, condition, instrument } = act;
  return act.shown.map((shown) => ({ ...common, check, condition, instrument, ...shownCells(shown) }));
}

/** What the notes of the grade gave or took for an act; null where they say nothing of it, and while the attempt is open. */
function pointsOf({ closed }: HeldAttempt, { kind, seq }: HeldAct): number | null {
  const notes = (closed?.grade.notes ?? []).filter(({ values }) =>
    kind === 'finding' ? values.finding === seq : values.finding === undefined && values.seq === seq,
  );
  const tenths = notes.reduce((sum, { points = 0 }) => sum + Math.round(points * 10), 0);
  return notes.length > 0 ? tenths / 10 : null;
}

/** Points stand in the first line of an act alone, so that the column can be added up. */
function withPoints([first, ...others]: Row[], points: number | null): Row[] {
  return first ? [{ ...first, points }, ...others] : [];
}

function findingCells({ quantity, entered, verdict, comparison, limit, clears, suspects, words }: FindingAct): Row {
  return {
    quantity,
    value: entered?.value ?? null,
    unit: entered?.unit ?? null,
    verdict,
    comparison,
    limit,
    clears: clears.join(' '),
    suspects: suspects.join(' '),
    words,
  };
}

function shownCells(shown: Shown): Row {
  const { quantity, kind } = shown;
  switch (kind) {
    case 'value':
      return { quantity, value: shown.value, unit: shown.unit };
    case 'off-scale':
      return { quantity, value: `${shown.end === 'low' ? 'below' : 'above'} ${shown.limit}`, unit: shown.unit };
    case 'codes':
      return { quantity, value: shown.codes.map(({ spn, fmi }) => `SPN ${spn} FMI ${fmi}`).join(', ') };
    case 'destroyed':
    case 'jet':
      return { quantity, value: kind };
  }
}

function rowsOfCall({ closed }: HeldAttempt): Row[] {
  if (!closed) return [];
  const { call, grade } = closed;
  const common = { act: call.seq, at: call.at.toISOString(), kind: call.kind };
  const first = { ...common, ...answerCells(call), restored: call.restored?.join(' ') ?? null, total: grade.total };
  return call.also ? [first, { ...common, ...answerCells(call.also) }] : [first];
}

function answerCells({ cause, repair, proof }: Answer): Row {
  return { cause, repair, check: proof.check, condition: proof.condition };
}
