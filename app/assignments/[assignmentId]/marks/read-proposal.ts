import { parts } from '@/lib/grading/grade';
import { type Change, changeSchema } from '@/lib/regrading/change';

/** A change of marks that an address proposes; undefined where it proposes none, or none that can be. */
export function readProposal(query: Readonly<Record<string, unknown>>): Change | undefined {
  return changeSchema.safeParse(proposed(query)).data;
}

function proposed({ kind, place, right, ...query }: Readonly<Record<string, unknown>>): unknown {
  switch (kind) {
    case 'weights':
      return { kind, weights: Object.fromEntries(parts.map((part) => [part, numberIn(query[part])])) };
    case 'withdraw':
      return { kind, place: numberIn(place) };
    case 'key':
      return { kind, place: numberIn(place), right: [right].flat() };
    default:
      return undefined;
  }
}

function numberIn(value: unknown): unknown {
  return typeof value === 'string' && value.trim() !== '' ? Number(value) : undefined;
}
