/** What people scored on items. */
export interface Responses {
  people: number;
  items: number;
  /** people × items, row by row: points from 0 to the item's maximum, NaN where somebody did not answer. */
  scores: Float64Array;
  /** Points that each item is worth, above 0. */
  maxima: Float64Array;
}

/**
 * @param rows  One row a person, one score an item; undefined where somebody did not answer.
 * @param maxima  Points that each item is worth; 1 where left out.
 * @throws RangeError where a row has another length, a maximum is not above 0, or a score lies outside 0…maximum.
 */
export function responsesFrom(
  rows: readonly (readonly (number | undefined)[])[],
  maxima: readonly number[] = (rows[0] ?? []).map(() => 1),
): Responses {
  const items = maxima.length;
  const scores = new Float64Array(rows.length * items);
  if (!maxima.every((maximum) => maximum > 0)) throw new RangeError('An item is worth more than 0 points');
  for (const [person, row] of rows.entries()) {
    if (row.length !== items) throw new RangeError(`Row ${person} has ${row.length} scores for ${items} items`);
    for (const [item, score] of row.entries()) {
      if (score !== undefined && !(score >= 0 && score <= (maxima[item] as number)))
        throw new RangeError(`Score ${score} of person ${person} on item ${item} is not in 0…${maxima[item]}`);
      scores[person * items + item] = score ?? Number.NaN;
    }
  }
  return { people: rows.length, items, scores, maxima: Float64Array.from(maxima) };
}

/** What each person earned, and what they could have earned on the items that they answered. In points. */
export interface Totals {
  earned: Float64Array;
  possible: Float64Array;
}

export function totalsOf({ people, items, scores, maxima }: Responses): Totals {
  const [earned, possible] = [new Float64Array(people), new Float64Array(people)];
  for (let person = 0, at = 0; person < people; person++) {
    let [points, most] = [0, 0];
    for (let item = 0; item < items; item++, at++) {
      const score = scores[at] as number;
      if (Number.isNaN(score)) continue;
      points += score;
      most += maxima[item] as number;
    }
    earned[person] = points;
    possible[person] = most;
  }
  return { earned, possible };
}
