import type { SetBody } from './set-body';

/**
 * A set as it is assigned: each written question in the version that is live then, whatever becomes of it later.
 *
 * @param live  Live version of a question, by the question's id.
 * @returns undefined where one has none.
 */
export function pinQuestions(body: SetBody, live: ReadonlyMap<string, string>): SetBody | undefined {
  const items = body.items.map((item) => {
    if (item.kind !== 'written') return item;
    const versionId = live.get(item.questionId);
    return versionId === undefined ? undefined : { ...item, versionId };
  });
  return items.every((item) => item !== undefined) ? { ...body, items } : undefined;
}
