import type { FieldFault } from '@/app/questions/draft-answer';
import { listLiveVersions, type WrittenVersion } from '@/db/queries/written-questions';
import { type CaseItem, drawCase } from '@/lib/sets/draw-case';
import { expectedCases, expectedQuestions } from '@/lib/sets/expected-tasks';
import { type ExpectedTasks, type Holding, holdAgainst } from '@/lib/sets/hold-against';
import { itemFault } from '@/lib/sets/item-faults';
import type { SetBody, SetItem } from '@/lib/sets/set-body';
import { topicsInOrder } from '@/lib/topics/topic';
import { topicsOf } from '@/lib/topics/topics-of';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { type FaultTeller, faultTeller } from './fault-words';

/** What a set is made of, and what of it can never be drawn, at the editor's fields. */
export interface LookedOver {
  holding: Holding;
  faults: readonly FieldFault[];
}

/** Looks a set over for whoever builds it: what its tasks are expected to be, and which can never be. */
export async function lookOver(
  { items, blueprint }: Pick<SetBody, 'items' | 'blueprint'>,
  organizationId: string,
): Promise<LookedOver> {
  const all = catalogue();
  const live = new Map((await listLiveVersions(database(), organizationId)).map((one) => [one.questionId, one]));
  const say = await faultTeller();
  const looked = items.map((item) => lookAt(item, live, say));
  const order = topicsInOrder(all).map(({ id }) => id);
  const parts = looked.flatMap(({ expected }) => expected ?? []);
  return {
    holding: holdAgainst(parts, order, blueprint === undefined ? undefined : all.blueprints.get(blueprint)),
    faults: looked.flatMap(({ fault }) => fault ?? []),
  };
}

interface Looked {
  expected?: ExpectedTasks | undefined;
  fault?: FieldFault;
}

function lookAt(item: SetItem, live: ReadonlyMap<string, WrittenVersion>, say: FaultTeller): Looked {
  const wrong = (field: string, text: string): Looked => ({ fault: { at: `items.${item.id}.${field}`, text } });
  const never = itemFault(item, catalogue());
  if (never) {
    const { field, text } = say.item(never);
    return wrong(field, text);
  }
  switch (item.kind) {
    case 'cases':
      return { expected: expectedCases(item) };
    case 'questions':
      return { expected: expectedQuestions(item) };
    case 'written': {
      const body = live.get(item.questionId)?.body;
      if (!body) return wrong('questionId', say.notLive);
      const { topics, seconds, difficulty } = body;
      return { expected: { topics, count: 1, minutes: seconds / 60, difficulty } };
    }
    case 'case': {
      const expected = expectedCase(item);
      return expected ? { expected } : wrong('code', say.notSettled);
    }
  }
}

/** Cases by their codes that were looked at lately; null for one that no check settles. */
const looked = new Map<string, ExpectedTasks | null>();
const MOST_LOOKED_AT = 200;

function expectedCase(item: Extract<CaseItem, { kind: 'case' }>): ExpectedTasks | null {
  const known = looked.get(item.code);
  if (known !== undefined) return known;
  const found = drawCase(item, '', catalogue());
  const expected =
    'unmet' in found
      ? null
      : {
          topics: topicsOf(found.case, catalogue()).map(({ id }) => id),
          count: 1,
          minutes: found.certificate.route.minutes,
          difficulty: found.certificate.difficulty,
        };
  looked.set(item.code, expected);
  for (const oldest of looked.keys()) if (looked.size > MOST_LOOKED_AT) looked.delete(oldest);
  return expected;
}
