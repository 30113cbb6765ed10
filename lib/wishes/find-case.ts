import type { Case } from '../cases/case';
import { seedFromWord } from '../cases/case-code';
import { caseFromSeed } from '../cases/case-from-seed';
import type { Catalogue } from '../catalogue';
import { type Certificate, certify } from '../diagnosis/certificate';
import { randomStream } from '../random';
import type { Rig } from '../rig/rig';
import { causesIn, practises } from '../topics/topics-of';
import { neverMet, rigsWished, type Wishes, type WishName, wishNames } from './wishes';

/** Draws before the search ends: a draw takes a millisecond or two. */
const MOST_DRAWN = 400;
/** Certificates before the search ends: each takes some hundred milliseconds. */
const MOST_CERTIFIED = 24;

export type Certify = (theCase: Case, catalogue: Catalogue) => Certificate;

export interface FoundCase {
  case: Case;
  certificate: Certificate;
}

/** Why there is no case. */
export interface UnmetWish {
  /** The wish that cannot be met, or the one that turned away the last candidates. */
  unmet: WishName;
  /** No seed could meet it; otherwise none met it among those drawn. */
  never: boolean;
  /** What of the wish cannot be met, where it never can. */
  names: readonly string[];
  drawn: number;
  certified: number;
}

/**
 * A case as wished, the same for the same seed, content and generator version. Cheap wishes are tried on every draw; what
 * a certificate tells, only on draws that meet them. A case that its checks do not settle is never given.
 *
 * @param seed  Any text.
 * @param by  Makes the certificate.
 */
export function findCase(
  wishes: Wishes,
  seed: string,
  catalogue: Catalogue,
  by: Certify = certify,
): FoundCase | UnmetWish {
  const refused = neverMet(wishes, catalogue);
  if (refused) return { ...refused, never: true, drawn: 0, certified: 0 };
  const rigs = rigsWished(wishes, catalogue);
  let last: WishName = 'rigs';
  let certified = 0;
  let drawn = 0;
  while (drawn < MOST_DRAWN && certified < MOST_CERTIFIED) {
    const theCase = draw(wishes, `${seed} ${drawn++}`, rigs, catalogue);
    const early = failsBefore(theCase, wishes, catalogue);
    const certificate = early ? undefined : by(theCase, catalogue);
    const failed = certificate ? failsAfter(certificate, wishes) : early;
    if (certificate) certified++;
    if (certificate && !failed) return { case: theCase, certificate };
    last = later(last, failed);
  }
  return { unmet: last, never: false, names: [], drawn, certified };
}

function draw({ hardest }: Wishes, word: string, rigs: readonly Rig[], catalogue: Catalogue): Case {
  const rig = randomStream(word, 'rig wished for').pick(rigs).id;
  return caseFromSeed({ rig, seed: seedFromWord(word), ...(hardest && { hardest }) }, catalogue);
}

/** The first wish that a case fails by what is wrong in it. */
function failsBefore(theCase: Case, { causes, topics, faults }: Wishes, catalogue: Catalogue): WishName | undefined {
  const wrong = causesIn(theCase, catalogue);
  if (causes && !wrong.every(({ id }) => causes.includes(id))) return 'causes';
  if (topics && !topics.some((id) => isPractised(id, theCase, catalogue))) return 'topics';
  if (faults && faults !== (wrong.length > 1 ? 'double' : 'single')) return 'faults';
  return undefined;
}

function isPractised(id: string, theCase: Case, catalogue: Catalogue): boolean {
  const topic = catalogue.topics.get(id);
  return topic !== undefined && practises(theCase, topic, catalogue);
}

/** The first wish that a case fails by what it takes to settle it. */
function failsAfter(certificate: Certificate, { difficulty, minutes }: Wishes): WishName | undefined {
  if (!certificate.settled) return 'settled';
  if (difficulty && !within(certificate.difficulty, difficulty)) return 'difficulty';
  if (minutes !== undefined && certificate.route.minutes > minutes) return 'minutes';
  return undefined;
}

function within(value: number, [min, max]: readonly [number, number]): boolean {
  return value >= min && value <= max;
}

/** The wish at which candidates got furthest is the one that turned away the last of them. */
function later(one: WishName, other: WishName | undefined): WishName {
  return other && wishNames.indexOf(other) > wishNames.indexOf(one) ? other : one;
}
