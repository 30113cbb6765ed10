import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { freshData, openPlace, placeFor, root, startServer, untilUp } from '../support/server';
import { fillUp } from './load/fill';
import { makeLearners } from './load/learners';
import { type PageTime, timePages } from './load/pages';
import { type Answered, work } from './load/work';
import { quantile } from './spread';

/**
 * The site under a full shop: signed-in learners at work at once, then the same pages with few and with very many acts
 * stored. `npm run load -- --learners 200 --seconds 60 --pause 10`
 */
const { values } = parseArgs({
  options: {
    learners: { type: 'string', default: '200' },
    seconds: { type: 'string', default: '60' },
    pause: { type: 'string', default: '10' },
    few: { type: 'string', default: '1000' },
    many: { type: 'string', default: '1000000' },
  },
});
const place = placeFor(3172);
const origin = `http://127.0.0.1:${place.port}`;
const ATTEMPTS_EACH = 4;

if (!existsSync(join(root, '.next/BUILD_ID'))) throw new Error('Needs a production build: npm run build');
await freshData(place);
const db = openPlace(place);
const learners = await makeLearners(db, origin, Number(values.learners), ATTEMPTS_EACH);
const server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
try {
  await untilUp(place);
  const [first] = learners[0]?.attempts ?? [];
  await fillUp(db, Number(values.few));
  const before = await timePages(db, origin, first?.id ?? '');
  const shift = { seconds: Number(values.seconds), pause: Number(values.pause) };
  printWork(await work(learners, shift), shift);
  await fillUp(db, Number(values.many));
  printPages(before, await timePages(db, origin, first?.id ?? ''));
} finally {
  server.kill('SIGTERM');
  rmSync(place.data, { recursive: true, force: true });
}

function printWork(answered: readonly Answered[], { seconds, pause }: { seconds: number; pause: number }): void {
  console.log(`${learners.length} learners for ${seconds} s, ${pause} s between acts`);
  for (const kind of ['reading', 'verdict'] as const) {
    const times = answered.filter((one) => one.kind === kind).map(({ ms }) => ms);
    const [p50, p95, p99] = [0.5, 0.95, 0.99].map((q) => quantile(times, q).toFixed(0));
    console.log(`${kind.padEnd(8)} ${times.length} requests, p50 ${p50} ms, p95 ${p95} ms, p99 ${p99} ms`);
  }
  const errors = answered.flatMap(({ error }) => error ?? []);
  console.log(`${(answered.length / seconds).toFixed(1)} requests/s, ${errors.length} errors`);
  for (const error of errors.slice(0, 3)) console.log(`  ${error}`);
  if (errors.length > 0) process.exitCode = 1;
}

function printPages(few: readonly PageTime[], many: readonly PageTime[]): void {
  console.log(`Pages with ${values.few} and ${values.many} acts stored, median ms`);
  for (const [i, { page, median }] of few.entries()) {
    const later = many[i]?.median ?? Number.NaN;
    console.log(`${page.padEnd(16)} ${median.toFixed(1)} → ${later.toFixed(1)}, × ${(later / median).toFixed(2)}`);
  }
}
