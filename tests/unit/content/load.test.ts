import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ContentError, loadCatalogue } from '@/content/load';
import { catalogue } from '../../support/bench-rig';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faultwright-content-'));
  cpSync('content', folder, { recursive: true });
});

afterEach(() => rmSync(folder, { recursive: true }));

/** Replaces one piece of text in one file, and makes sure that it was there. */
function edit(file: string, from: string | RegExp, to: string): void {
  const path = join(folder, file);
  const before = readFileSync(path, 'utf8');
  const after = before.replace(from, to);
  if (after === before) throw new Error(`${file} has no ${from}`);
  writeFileSync(path, after);
}

function refusal(): string {
  try {
    loadCatalogue(folder);
  } catch (error) {
    if (error instanceof ContentError) return error.message;
    throw error;
  }
  throw new Error('The content loaded');
}

test('content loads, each item under its own id', () => {
  const { rigs, causes } = loadCatalogue(folder);
  expect([...rigs.keys()]).toEqual(expect.arrayContaining(['petrel-15', 'plover-7', 'tern-13']));
  for (const [id, cause] of causes) expect(cause.id).toBe(id);
});

test('the hash is of what the content says, not of how it is laid out', () => {
  const path = join(folder, 'gauges/clear-hose.json');
  writeFileSync(path, `\n${JSON.stringify(JSON.parse(readFileSync(path, 'utf8')))}`);
  expect(loadCatalogue(folder).contentHash).toBe(catalogue.contentHash);
});

test('a changed number makes another hash', () => {
  edit('gauges/clear-hose.json', /"max": \d+/, '"max": 61');
  expect(loadCatalogue(folder).contentHash).not.toBe(catalogue.contentHash);
});

test('a file that is no JSON is named', () => {
  edit('causes/lift-pump-weak.json', '{', '{,');
  expect(refusal()).toMatch(/^content\/causes\/lift-pump-weak\.json: not JSON: /);
});

test.each([
  ['gauges/dial-0-30-psi.json', /"unit": "psi"/, '"unit": "furlong"', /dial-0-30-psi\.json: unit: .*"psi"/],
  ['gauges/dial-0-30-psi.json', /"min": 0/, '"min": 99', /dial-0-30-psi\.json: range: min must lie below max/],
  ['rigs/tern-13.json', /"boreMm": \d+/, '"boreMm": -3', /tern-13\.json: elements\.\d+\.boreMm: .*>0/],
  ['rigs/tern-13.json', /"boreMm": \d+,/, '', /tern-13\.json: elements\.\d+\.boreMm: .*expected number/],
  ['rigs/tern-13.json', /"fmi": \d+/, '"fmi": 32', /tern-13\.json: codes\.0\.fmi: .*31/],
  ['causes/lift-pump-weak.json', /"area": "[a-z-]+"/, '"area": "attic"', /lift-pump-weak\.json: area: .*"priming"/],
  [
    'causes/lift-pump-weak.json',
    /"by": "[a-z]+"/,
    '"by": "magic"',
    /lift-pump-weak\.json: effects\.0\.by: .*"multiply"/,
  ],
  ['checks/prime-pressure.json', /"key-on"/, '"Key On"', /prime-pressure\.json: conditions\.0: .*"key-on"/],
  ['fuels/summer-grade.json', '{', '{ "colour": "red",', /summer-grade\.json: top level: .*colour/],
  ['rubrics/standard.json', '"call": 30', '"call": 31', /standard\.json: parts: the weights .* must sum to 100/],
  ['rubrics/standard.json', '"areaOnly": 0.25', '"areaOnly": 0.6', /standard\.json: call: the area alone/],
  ['rubrics/standard.json', '[25, 40,', '[25, 25,', /standard\.json: bands: bands must rise/],
  ['rubrics/standard.json', '"safetyCap": 39', '"safetyCap": 40', /standard\.json: .*safetyCap must lie/],
  ['restoring/steps.json', '"wrong": false', '"wrong": 0', /steps\.json: steps\.0\.wrong: .*boolean/],
])('a mistake in %s is named with its place and what was expected', (file, from, to, message) => {
  edit(file, from, to);
  expect(refusal()).toMatch(message);
});

/** A rig, as somebody who adds one may get it wrong. */
test.each([
  [
    'a kind that there is not',
    '"kind": "lift-pump"',
    '"kind": "steam-pump"',
    /elements\.\d+\.kind: .*'tank' \| .*'lift-pump' \| /,
  ],
  ['a missing parameter', /"freeFlowLmin": [\d.]+,/, '', /elements\.\d+\.freeFlowLmin: .*expected number/],
  ['a parameter of another kind', '"boreMm"', '"areaMm2": 3, "boreMm"', /elements\.\d+: .*"areaMm2"/],
  ['a text for a number', '"setKpa": 430', '"setKpa": "430"', /elements\.\d+\.setKpa: .*expected number/],
  ['a share above one', '"supplyShare": 1', '"supplyShare": 1.2', /elements\.\d+\.supplyShare: .*<=1/],
  ['a side that there is not', '"side": "suction"', '"side": "sucking"', /nodes\.\d+\.side: .*"suction"/],
  ['a condition left out', '"high-idle": {', '"fast-idle": {', /conditions\.high-idle: .*expected object/],
  ['a limit with min above max', /"min": 400,/, '"min": 4000,', /limits\.\d+: min must lie below max/],
  ['a limit with neither', /"min": 10,\s*"unit": "%"/, '"unit": "%"', /limits\.\d+: a limit needs min, max or both/],
  ['a port misnamed', '"id": "F1"', '"id": "F-1"', /ports\.\d+\.id: .*capital letter and a digit/],
  ['no word that it is invented', '"invented": true', '"invented": false', /invented: .*expected true/],
])('a rig with %s is refused by file, path and expectation', (_what, from, to, message) => {
  edit('rigs/plover-7.json', from, to);
  expect(refusal()).toMatch(message);
  expect(refusal()).toMatch(/^content\/rigs\/plover-7\.json: /);
});

test('every mistake of a file is told at once', () => {
  edit('gauges/dial-0-30-psi.json', /"unit": "psi"/, '"unit": "furlong"');
  edit('gauges/dial-0-30-psi.json', /"display": "dial"/, '"display": "sundial"');
  expect(refusal().split('\n')).toHaveLength(2);
});

test('a file must be named as its id', () => {
  edit('causes/lift-pump-weak.json', '"id": "lift-pump-weak"', '"id": "lift-pump-tired"');
  expect(refusal()).toBe('content/causes/lift-pump-weak.json: id: expected lift-pump-weak, got lift-pump-tired');
});

test.each([
  ['rigs/tern-13.json', /"from": "tank"/, '"from": "bucket"', 'content/rigs/tern-13.json: elements: no node bucket'],
  [
    'rigs/tern-13.json',
    /"node": "gear-pump-inlet"/,
    '"node": "attic"',
    'content/rigs/tern-13.json: ports: no node attic',
  ],
  ['rigs/petrel-15.json', /"to": "rail"/, '"to": "rial"', 'content/rigs/petrel-15.json: elements: no node rial'],
  ['rigs/petrel-15.json', /"primingNode": "[a-z-]+"/, '"primingNode": "attic"', 'petrel-15.json: no node attic'],
  [
    'rigs/plover-7.json',
    /"heldBy": "[a-z-]+"/,
    '"heldBy": "gravity"',
    'content/rigs/plover-7.json: standing.heldBy: no element gravity',
  ],
  [
    'rigs/plover-7.json',
    /"element": "main-filter"/,
    '"element": "tea-strainer"',
    'content/rigs/plover-7.json: ageing: no element tea-strainer',
  ],
  [
    'rigs/plover-7.json',
    /"fuels": \[\s*"winter-grade"/,
    '"fuels": ["snow-grade"',
    'content/rigs/plover-7.json: settings.fuels: no fuel snow-grade',
  ],
  ['rigs/tern-13.json', /"check": "prime-pressure"/, '"check": "compression"', /limits: no check compression/],
  [
    'causes/lift-pump-weak.json',
    /"parameter": "condition"/,
    '"parameter": "mood"',
    /effects: no parameter lift-pump\.mood/,
  ],
  [
    'causes/lift-pump-weak.json',
    /"check": "prime-pressure"/,
    '"check": "compression"',
    /provenBy: no check compression/,
  ],
  ['checks/prime-pressure.json', /"F1"/, '"F9"', /content\/checks\/prime-pressure\.json: ports\.tern-13: no port F9/],
  ['checks/prime-pressure.json', /"dial-0-30-psi"/, '"sundial"', /instruments: no gauge sundial/],
])('a name in %s that points at nothing is told', (file, from, to, message) => {
  edit(file, from, to);
  expect(refusal()).toMatch(message);
});

test.each([
  ['codes/j1939.json', 'content/codes: expected one file, got none'],
  ['restoring/steps.json', 'content/restoring: expected one file, got none'],
  ['rubrics/standard.json', 'content/rubrics: no rubric standard'],
])('content without %s does not load', (file, message) => {
  rmSync(join(folder, file));
  expect(refusal()).toBe(message);
});

test('what moves no reading does not move the hash', () => {
  edit('rubrics/standard.json', '"version": 1', '"version": 2');
  edit('restoring/steps.json', '"wrong": false', '"wrong": true');
  expect(loadCatalogue(folder).contentHash).toBe(catalogue.contentHash);
});
