export type OutcomeKind = 'right' | 'oneTooMany' | 'area' | 'wrong' | 'both' | 'oneOfTwo' | 'twoArea' | 'twoWrong';

/**
 * What a call came to, in one word.
 *
 * @param areaRight  For every cause there is.
 */
export function outcomeKind(truths: readonly string[], answers: readonly string[], areaRight: boolean): OutcomeKind {
  const found = truths.filter((truth) => answers.includes(truth)).length;
  if (truths.length > 1) {
    if (found > 1) return 'both';
    return found === 1 ? 'oneOfTwo' : areaRight ? 'twoArea' : 'twoWrong';
  }
  if (found === 1) return answers.length > 1 ? 'oneTooMany' : 'right';
  return areaRight ? 'area' : 'wrong';
}
