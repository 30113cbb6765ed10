import type { Case } from '@/lib/cases/case';
import type { Catalogue } from '@/lib/catalogue';
import { type KnownOfCase, knownOf } from '@/lib/grading/grade-attempt';
import { findCase } from '@/lib/wishes/find-case';
import type { Wishes } from '@/lib/wishes/wishes';
import type { Job } from '../policies/job';

/** What a class is given, the easiest first; a level begins before the last one ends. Logits. */
const LEVELS: readonly Pick<Wishes, 'difficulty' | 'hardest'>[] = [
  { difficulty: [-5, -0.6] },
  { difficulty: [-1.3, 0.8] },
  { difficulty: [-1, 2] },
  { hardest: true, difficulty: [-0.4, 4] },
];
/** Cases of each level on each rig. */
const VARIANTS = 2;

/**
 * Cases that an instructor reads out to a class, harder and harder over all rigs. Some apprentices get the same ones, as
 * in any class; each is worked out once.
 */
export class CaseLadder {
  private readonly jobs = new Map<string, Job>();

  constructor(
    readonly catalogue: Catalogue,
    private readonly word: string,
  ) {}

  /** The n-th of `count` cases of one apprentice, all of them different up to a dozen. */
  caseFor(apprentice: number, n: number, count: number): Job {
    const rigs = [...this.catalogue.rigs.keys()];
    const rig = rigs[(apprentice + n) % rigs.length] ?? '';
    const level = Math.floor((n * LEVELS.length) / Math.max(count, LEVELS.length));
    const word = `${this.word} ${rig} ${level} ${apprentice % VARIANTS}`;
    const job = this.jobs.get(word) ?? this.find(rig, level, word);
    this.jobs.set(word, job);
    return job;
  }

  /** Those that were read out so far. */
  readOut(): Job[] {
    return [...this.jobs.values()];
  }

  private find(rig: string, level: number, word: string): Job {
    const { catalogue } = this;
    const known = new Map<Case, KnownOfCase>();
    const found = findCase({ rigs: [rig], ...LEVELS[level] }, word, catalogue, (theCase) => {
      const all = knownOf(theCase, catalogue);
      known.set(theCase, all);
      return all.certificate;
    });
    if ('unmet' in found) throw new RangeError(`No case of level ${level} on ${rig}: ${found.unmet}`);
    return { theCase: found.case, catalogue, ...(known.get(found.case) ?? knownOf(found.case, catalogue)) };
  }
}
