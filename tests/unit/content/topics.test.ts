import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { loadCatalogue } from '@/content/load';
import { catalogue } from '../../support/bench-rig';

const FILE = 'content/topics/filtration.json';
let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faultwright-topics-'));
  cpSync('content', folder, { recursive: true });
});

afterEach(() => rmSync(folder, { recursive: true }));

function edit(from: string, to: string): void {
  const path = join(folder, 'topics/filtration.json');
  const before = readFileSync(path, 'utf8');
  expect(before).toContain(from);
  writeFileSync(path, before.replace(from, to));
}

test.each([
  ['a check that there is not', '"screen-drop"', '"sieve-drop"', `${FILE}: checks: no check sieve-drop`],
  [
    'an area that there is not',
    '"areas": ["filtration"]',
    '"areas": ["attic"]',
    /filtration\.json: areas\.0: .*"priming"/,
  ],
  ['no place', '"place": 6', '"place": 0', /filtration\.json: place: .*>0/],
  ['no words', '"about"', '"abaut"', /filtration\.json: text\.en\.about: /],
])('a topic with %s stops the load', (_what, from, to, message) => {
  edit(from, to);
  expect(() => loadCatalogue(folder)).toThrow(message);
});

test('what a topic says makes no other content version: it moves no reading', () => {
  edit('"name": "Filtration"', '"name": "Filters"');
  const changed = loadCatalogue(folder);
  expect(changed.topics.get('filtration')?.text.en.name).toBe('Filters');
  expect(changed.contentHash).toBe(catalogue.contentHash);
});
