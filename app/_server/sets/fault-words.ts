import { getTranslations } from 'next-intl/server';
import type { ItemFault } from '@/lib/sets/item-faults';
import { catalogue } from '../catalogue';

export interface FaultTeller {
  /** What was expected in a field of the editor. */
  field: (name: string, code: string) => string;
  /** Why an item can never be drawn, and at which of its fields that is to be said. */
  item: (fault: ItemFault) => { field: string; text: string };
  /** That a written question is not there to be asked. */
  notLive: string;
  /** That no check settles a case. */
  notSettled: string;
}

/** Words for what can be wrong with a set. */
export async function faultTeller(): Promise<FaultTeller> {
  const t = await getTranslations('sets.faults');
  return {
    notLive: t('not-live'),
    notSettled: t('not-settled'),
    field: (name, code) => {
      if (code === 'too_big' && (name === 'title' || name === 'note')) return t(`long-${name}`);
      switch (name) {
        case 'title':
        case 'count':
        case 'from':
        case 'to':
        case 'minutes':
        case 'topic':
        case 'code':
        case 'items':
          return t(name);
        case 'questionId':
          return t('question');
        default:
          return t('other');
      }
    },
    item: (fault) => {
      switch (fault.code) {
        case 'never-met':
          return { field: fieldOf(fault.unmet), text: t(`never.${fault.unmet}`, { names: namesOf(fault.names) }) };
        case 'unknown-topic':
          return { field: 'topic', text: t('topic') };
        case 'kind-not-on-topic':
          return { field: 'questionKind', text: t('kind-not-on-topic') };
        default:
          return { field: 'code', text: t(fault.code) };
      }
    },
  };
}

function fieldOf(wish: string): string {
  return wish === 'difficulty' ? 'from' : wish;
}

function namesOf(ids: readonly string[]): string {
  const { topics, rigs } = catalogue();
  return ids.map((id) => topics.get(id)?.text.en.name ?? rigs.get(id)?.text.en.name ?? id).join(', ');
}
