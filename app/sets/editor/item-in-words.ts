import { withValues } from '@/app/_ui/with-values';
import type { DraftItem, DraftOf } from './draft';
import type { Choice, SetChoices, SetWords } from './set-words';

/** An item in a line: how many of what, and what is wished of them. */
export function itemInWords(item: DraftItem, words: SetWords, choices: SetChoices): string {
  switch (item.kind) {
    case 'case':
      return withValues(words.line.case, { code: item.code || words.notChosen });
    case 'written':
      return withValues(words.line.written, { title: nameIn(choices.written, item.questionId) || words.notChosen });
    case 'questions': {
      const what = item.questionKind ? nameIn(choices.kinds, item.questionKind) : words.anyKind;
      const topic = nameIn(choices.topics, item.topic) || words.notChosen;
      return withValues(words.line.questions, { count: item.count, kind: what, topic });
    }
    case 'cases':
      return [withValues(words.line.cases, { count: item.count }), ...wishesInWords(item, words, choices)].join(' · ');
  }
}

function wishesInWords(item: DraftOf<'cases'>, words: SetWords, choices: SetChoices): string[] {
  const { topics, rigs, from, to, hardest, faults, minutes } = item;
  const named = (list: readonly Choice[], ids: readonly string[]) => ids.map((id) => nameIn(list, id) || id).join(', ');
  return [
    topics.length > 0 ? named(choices.topics, topics) : words.anyTopic,
    rigs.length > 0 ? named(choices.rigs, rigs) : '',
    from || to ? withValues(words.line.band, { from: from || '…', to: to || '…' }) : '',
    hardest ? words.hardest : '',
    faults ? words.faults[faults] : '',
    minutes ? withValues(words.line.minutes, { minutes }) : '',
  ].filter((text) => text !== '');
}

function nameIn(list: readonly Choice[], value: string): string {
  return list.find((one) => one.value === value)?.label ?? '';
}
