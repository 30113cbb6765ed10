import { parseCaseCode } from '../cases/case-code';
import { caseFromSeed } from '../cases/case-from-seed';
import type { Catalogue } from '../catalogue';
import { certify } from '../diagnosis/certificate';
import { topicsOf } from '../topics/topics-of';
import { type Certify, type FoundCase, findCase, type UnmetWish } from '../wishes/find-case';
import type { Wishes } from '../wishes/wishes';
import type { CaseWishes, SetItem } from './set-body';

export type CaseItem = Extract<SetItem, { kind: 'case' | 'cases' }>;

/** What parallel cases have in common. */
export interface Likeness {
  /** Logits, of the case that the others are to be like. */
  difficulty: number;
  /** At least one of these is practised. Left out, the item's own wishes say. */
  topics?: readonly string[];
}

/** How far parallel cases lie from the one that they are to be like, logits. */
export const ALIKE_WITHIN = 0.35;
/** Searches for a parallel case before it is given up: the band leaves few of those that are drawn. */
const SEARCHES = 3;

/**
 * The case of an item of a set. One that is named by its code is the same for every seed.
 *
 * @param seed  Any text; for assessed work one that only the installation can make.
 * @param like  Draws a parallel case: as wished, and as hard within ALIKE_WITHIN.
 * @param by  Makes the certificate.
 */
export function drawCase(
  item: CaseItem,
  seed: string,
  catalogue: Catalogue,
  like?: Likeness,
  by: Certify = certify,
): FoundCase | UnmetWish {
  if (item.kind === 'case') return caseByCode(item.code, catalogue, by);
  if (!like) return findCase(wishesOf(item.wishes), seed, catalogue, by);
  return firstFound(parallelWishes(item.wishes, like), seed, catalogue, by);
}

/** What a case has in common with its parallels. Holds a hint at the truth: for the server alone. */
export function likenessOf({ case: theCase, certificate }: FoundCase, catalogue: Catalogue): Likeness {
  const topics = topicsOf(theCase, catalogue).map(({ id }) => id);
  return { difficulty: certificate.difficulty, ...(topics.length > 0 && { topics }) };
}

/** What the generator is asked for by an item's wishes. */
export function wishesOf(wishes: CaseWishes): Wishes {
  return Object.fromEntries(Object.entries(wishes).filter(([, value]) => value !== undefined));
}

function caseByCode(code: string, catalogue: Catalogue, by: Certify): FoundCase | UnmetWish {
  const parsed = parseCaseCode(code, catalogue);
  const never = { never: true, names: [code], drawn: 0, certified: 0 };
  if ('error' in parsed) return { unmet: 'causes', ...never };
  const theCase = caseFromSeed(parsed.spec, catalogue);
  const certificate = by(theCase, catalogue);
  return certificate.settled ? { case: theCase, certificate } : { unmet: 'settled', ...never };
}

function parallelWishes(wishes: CaseWishes, { difficulty, topics }: Likeness): Wishes {
  const [min, max] = wishes.difficulty ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const shared = topics?.filter((id) => wishes.topics?.includes(id) ?? true) ?? [];
  return {
    ...wishesOf(wishes),
    ...(shared.length > 0 && { topics: shared }),
    difficulty: [Math.max(min, difficulty - ALIKE_WITHIN), Math.min(max, difficulty + ALIKE_WITHIN)],
  };
}

function firstFound(wishes: Wishes, seed: string, catalogue: Catalogue, by: Certify): FoundCase | UnmetWish {
  for (let search = 1; ; search++) {
    const found = findCase(wishes, search === 1 ? seed : `${seed} search ${search}`, catalogue, by);
    if ('case' in found || found.never || search === SEARCHES) return found;
  }
}
