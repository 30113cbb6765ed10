import type { Draw } from '../../kind';
import { type CodeSet, type CodeSets, codeSetsOn, type Storing } from './code-sets';
import type { ReadCodeRanges } from './ranges';
import { ELECTRICAL, REASONING } from './words';

/** What is stored, which causes do that, and which never can. */
export interface DrawnSet extends CodeSet {
  never: readonly NeverStores[];
  topics: readonly string[];
}

/** A cause that stores no code of a parameter, however bad it is. */
export interface NeverStores {
  storing: Storing;
  spn: number;
}

/** Codes that several causes store alike, on the topic where one is asked for. */
export function drawSet({ rig, ranges, catalogue, stream, topic }: Draw<ReadCodeRanges>): DrawnSet | undefined {
  const all = codeSetsOn(rig, catalogue);
  const fitting = all.sets.filter(
    ({ codes, possible }) =>
      possible.length > 1 && codes.length <= ranges.mostCodes && isOn(topic, topicsOf(codes, ranges)),
  );
  if (fitting.length === 0) return undefined;
  const set = stream('set').pick(fitting);
  return { ...set, never: neverStoring(all, set, ranges), topics: topicsOf(set.codes, ranges) };
}

function isOn(topic: string | undefined, topics: readonly string[]): boolean {
  return topic === undefined || topics.includes(topic);
}

function topicsOf(codes: CodeSet['codes'], { topics }: ReadCodeRanges): string[] {
  return [...new Set([REASONING, ELECTRICAL, ...codes.flatMap(({ spn }) => topics[spn] ?? [])])];
}

/**
 * Causes that store nothing of one part of the trade that the codes tell of. What stores some of it, or the same with another
 * mode, is left out: it could be disputed.
 */
function neverStoring({ storing }: CodeSets, { codes }: CodeSet, { topics }: ReadCodeRanges): NeverStores[] {
  return storing.flatMap((one) => {
    const missing = codes.find(({ spn }) =>
      codes.every((code) => !alike(spn, code.spn, topics) || !one.spns.has(code.spn)),
    );
    return missing ? [{ storing: one, spn: missing.spn }] : [];
  });
}

function alike(spn: number, other: number, topics: ReadCodeRanges['topics']): boolean {
  return spn === other || (topics[spn] ?? []).some((topic) => topics[other]?.includes(topic));
}
