import type { Answer } from '@/lib/questions/answer';

/** An answer as its form posts it. */
export function answerFields(answer: Answer): Record<string, string | readonly string[]> {
  switch (answer.form) {
    case 'choice':
      return { option: answer.option };
    case 'several':
      return { options: answer.options };
    case 'order':
      return { order: answer.order };
    case 'numbers':
      return Object.fromEntries(
        Object.entries(answer.parts).flatMap(([id, { value, unit }]) => [
          // Nobody types more decimals than a field takes.
          [`value.${id}`, String(Number(value.toFixed(6)))],
          ...(unit ? [[`unit.${id}`, unit]] : []),
        ]),
      );
    case 'point':
      return { target: answer.target };
    case 'grid':
      return Object.fromEntries(Object.entries(answer.cells).map(([row, column]) => [`cell.${row}`, column]));
    case 'stretch':
      return { stretch: answer.stretch };
    case 'spot':
      return { shape: answer.shape };
    case 'words':
      return { text: answer.text };
  }
}
