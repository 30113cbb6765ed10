export interface ExactCharacteristic {
  ready: number;
  notYet: number;
  undecided: number;
  /** Mean number of answers. */
  responses: number;
}

/**
 * What comes of a procedure, exactly: by the distribution of how many answers are right after each task among those who are still
 * undecided. Tasks are right or wrong and come in one order for everybody.
 *
 * @param chances  Of a right answer, by task; after the last, whoever is left stays undecided.
 * @param decide  May hang on how many were asked and how many of these were right.
 */
export function exactCharacteristics(
  chances: readonly number[],
  decide: (asked: number, right: number) => 'ready' | 'not-yet' | 'continue',
): ExactCharacteristic {
  const found = { ready: 0, notYet: 0, undecided: 0, responses: 0 };
  let shares = [1];
  for (const [before, chance] of chances.entries()) {
    const asked = before + 1;
    const after = Array.from(
      { length: asked + 1 },
      (_, right) => (shares[right] ?? 0) * (1 - chance) + (shares[right - 1] ?? 0) * chance,
    );
    shares = after.map((share, right) => {
      const decision = decide(asked, right);
      if (decision === 'continue') return share;
      found[decision === 'ready' ? 'ready' : 'notYet'] += share;
      found.responses += asked * share;
      return 0;
    });
  }
  found.undecided = shares.reduce((sum, share) => sum + share, 0);
  found.responses += chances.length * found.undecided;
  return found;
}
