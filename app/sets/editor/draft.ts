import type { QuestionKindId } from '@/lib/questions/question';
import type { SetBody, SetItem } from '@/lib/sets/set-body';

/** An item of a set as it is being typed. */
export type DraftItem =
  | { id: string; kind: 'case'; code: string }
  | {
      id: string;
      kind: 'cases';
      count: string;
      topics: readonly string[];
      rigs: readonly string[];
      from: string;
      to: string;
      hardest: boolean;
      faults: '' | 'single' | 'double';
      minutes: string;
    }
  | { id: string; kind: 'written'; questionId: string }
  | { id: string; kind: 'questions'; count: string; questionKind: QuestionKindId | ''; topic: string };

export type DraftOf<K extends DraftItem['kind']> = Extract<DraftItem, { kind: K }>;

/** A set as it is being built. */
export interface Draft {
  title: string;
  note: string;
  /** Empty without one. */
  blueprint: string;
  items: readonly DraftItem[];
}

export function emptyDraft(): Draft {
  return { title: '', note: '', blueprint: '', items: [] };
}

export function draftOf({ title, note, blueprint = '', items }: SetBody): Draft {
  return { title, note, blueprint, items: items.map(draftItemOf) };
}

function draftItemOf(item: SetItem): DraftItem {
  switch (item.kind) {
    case 'case':
    case 'written':
      return item;
    case 'questions':
      return { ...item, count: String(item.count), questionKind: item.questionKind ?? '' };
    case 'cases': {
      const { topics = [], rigs = [], difficulty, hardest = false, faults = '', minutes } = item.wishes;
      const [from, to] = difficulty?.map(String) ?? ['', ''];
      return {
        id: item.id,
        kind: 'cases',
        count: String(item.count),
        topics,
        rigs,
        from: from ?? '',
        to: to ?? '',
        hardest,
        faults,
        minutes: minutes === undefined ? '' : String(minutes),
      };
    }
  }
}

/** A new item, as empty as its kind can be. */
export function newItem(kind: DraftItem['kind'], id: string): DraftItem {
  switch (kind) {
    case 'case':
      return { id, kind, code: '' };
    case 'written':
      return { id, kind, questionId: '' };
    case 'questions':
      return { id, kind, count: '1', questionKind: '', topic: '' };
    case 'cases':
      return {
        id,
        kind,
        count: '1',
        topics: [],
        rigs: [],
        from: '',
        to: '',
        hardest: false,
        faults: '',
        minutes: '',
      };
  }
}

/** An id that no item of the set has. */
export function freeItemId(items: readonly { id: string }[]): string {
  for (let n = items.length + 1; ; n++) if (!items.some(({ id }) => id === `i${n}`)) return `i${n}`;
}
