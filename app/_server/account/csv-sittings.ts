import type { Answer } from '@/lib/questions/answer';
import type { Row } from './csv-export';
import type { HeldQuestion, HeldSitting } from './held-sitting';

/** A sitting as lines: its start, each answer, each mark. Points are those of the question, of `steps`. */
export function rowsOfSitting({ organizationId, sittingId, startedAt, questions }: HeldSitting): Row[] {
  const of = { organization: organizationId, sitting: sittingId };
  const rows = [{ kind: 'start', at: startedAt.toISOString() }, ...questions.flatMap(rowsOfQuestion)];
  return rows.map((row) => ({ ...of, ...row }));
}

function rowsOfQuestion({ place, kind, topic, answers, marked }: HeldQuestion): Row[] {
  const of = { place, question: kind ?? 'written', topic };
  const rows: Row[] = answers.map(({ seq, at, answer }) => ({
    ...of,
    act: seq,
    kind: 'answer',
    at: at.toISOString(),
    answer: inOneCell(answer),
  }));
  if (!marked) return rows;
  const { at, answer, asked, mark, byHand } = marked;
  const points = byHand?.score ?? mark.score;
  const given = answer ? inOneCell(answer) : null;
  const words = byHand?.comment ?? null;
  return [...rows, { ...of, kind: 'mark', at: at.toISOString(), answer: given, points, steps: asked.steps, words }];
}

/** Ids as the question had them, or what was written. */
function inOneCell(answer: Answer): string {
  switch (answer.form) {
    case 'choice':
      return answer.option;
    case 'several':
      return answer.options.join(' ');
    case 'order':
      return answer.order.join(' ');
    case 'numbers':
      return Object.entries(answer.parts)
        .map(([part, { value, unit }]) => `${part}: ${value}${unit ? ` ${unit}` : ''}`)
        .join(', ');
    case 'point':
      return answer.target;
    case 'grid':
      return Object.entries(answer.cells)
        .map(([row, column]) => `${row}: ${column}`)
        .join(', ');
    case 'stretch':
      return answer.stretch;
    case 'spot':
      return answer.shape;
    case 'words':
      return answer.text;
  }
}
