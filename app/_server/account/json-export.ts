import type { HeldOn } from './everything-held-on';

/** Everything held on a person as one JSON object, piece by piece. */
export async function* jsonExport({ facts, attempts, sittings, log }: HeldOn, at: Date): AsyncGenerator<string> {
  const head = JSON.stringify({ exportedAt: at, ...facts }, null, 2);
  yield head.slice(0, head.lastIndexOf('\n}'));
  yield ',\n  "attempts": ';
  yield* jsonList(attempts());
  yield ',\n  "sittings": ';
  yield* jsonList(sittings());
  yield ',\n  "log": ';
  yield* jsonList(log());
  yield '\n}\n';
}

/** A list with an item a line. */
async function* jsonList(items: AsyncIterable<object>): AsyncGenerator<string> {
  let before = '[\n    ';
  for await (const item of items) {
    yield before + JSON.stringify(item);
    before = ',\n    ';
  }
  yield before.startsWith('[') ? '[]' : '\n  ]';
}
