import { type CaseCodeError, parseCaseCode } from '../cases/case-code';
import type { Catalogue } from '../catalogue';
import { kindsOn } from '../questions/question-from-seed';
import { type NeverMet, neverMet } from '../wishes/wishes';
import { wishesOf } from './draw-case';
import type { SetBody, SetItem } from './set-body';

/** Why an item can never be drawn, as it stands. */
export type ItemFault =
  /** The code of a case cannot be read. */
  | { code: CaseCodeError }
  /** No seed meets the wish. */
  | ({ code: 'never-met' } & NeverMet)
  | { code: 'unknown-topic' }
  /** Nothing of the kind is asked on the topic. */
  | { code: 'kind-not-on-topic' };

/** What is wrong with an item, by content alone: written questions are for whoever knows the organisation's. */
export function itemFault(item: SetItem, catalogue: Catalogue): ItemFault | undefined {
  switch (item.kind) {
    case 'case': {
      const parsed = parseCaseCode(item.code, catalogue);
      return 'error' in parsed ? { code: parsed.error } : undefined;
    }
    case 'cases': {
      const never = neverMet(wishesOf(item.wishes), catalogue);
      return never && { code: 'never-met', ...never };
    }
    case 'written':
      return undefined;
    case 'questions': {
      if (!catalogue.topics.has(item.topic)) return { code: 'unknown-topic' };
      const on = kindsOn(item.topic);
      const isAsked = item.questionKind ? on.includes(item.questionKind) : on.length > 0;
      return isAsked ? undefined : { code: 'kind-not-on-topic' };
    }
  }
}

/** Items of a set that can never be drawn, by their ids. */
export function setFaults({ items }: Pick<SetBody, 'items'>, catalogue: Catalogue): Map<string, ItemFault> {
  return new Map(
    items.flatMap((item) => {
      const fault = itemFault(item, catalogue);
      return fault ? [[item.id, fault] as const] : [];
    }),
  );
}
