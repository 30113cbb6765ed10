import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { XmlDocument, XmlValidateError, XsdValidator } from 'libxml2-wasm';
import { expect, test } from 'vitest';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { anyWrittenQuestion } from '../support/any-written-question';
import { packed } from '../support/packages';
import { structureFaults } from '../support/qti-structure';
import { aWrittenQuestion } from '../support/written-questions';

/**
 * Packages against the structure of the standard, read by another parser than ours (libxml2).
 *
 * @source 1EdTech QTI 3.0 and IMS Content Packaging 1.2, as ../shared/reference/competency.md 4.3 gives them. The official
 *   schema files could not be had here; what stands in for them is in qti-schema/README.md.
 */
const ITEM_NAMESPACE = 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0';
const MANIFEST_NAMESPACE = 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1';
const spaces = { q: ITEM_NAMESPACE, m: MANIFEST_NAMESPACE };

const schema = XsdValidator.fromDoc(
  XmlDocument.fromBuffer(readFileSync(new URL('qti-schema/manifest.xsd', import.meta.url))),
);

const nasty = 'A < B & "C" ]]> \u{1F527} ü \u0001';
const picture = { id: 'a'.repeat(20), width: 80, height: 60, alt: nasty };
const questions = [
  ...writtenForms.map((form) => aWrittenQuestion(form)),
  aWrittenQuestion('choice', {
    title: nasty,
    stem: nasty,
    explanation: `${nasty}\n\n<script>alert(1)</script>`,
    picture,
  }),
  aWrittenQuestion('choice', {
    stem: '# A\n\n- b\n  1. c\n\n> d\n\n```\ne\n```\n\n![f](https://shop.example/f.png) [g](javascript:h)',
  }),
  aWrittenQuestion('choice', {
    stem: '[a {before}](https://shop.example/{before}) **b\\\nc**\n\n---\n\n<https://shop.example>',
  }),
  aWrittenQuestion('numbers', { body: { formula: 'round(before / after) + min(before, 2, pi) ^ sqrt(e)' } }),
  aWrittenQuestion('numbers', { stem: '[{after}](https://shop.example/{after}) {after}' }),
  aWrittenQuestion('numbers', { stem: 'None', explanation: '{answer}', body: { variables: [], formula: '2 / 3' } }),
  aWrittenQuestion('numbers', { body: { tolerance: { kind: 'percent', amount: 2 }, unit: 'psi' } }),
  aWrittenQuestion('words', { body: { guidance: '' } }),
];

interface Package {
  files: readonly string[];
  manifest: XmlDocument;
  items: [name: string, item: XmlDocument][];
}

async function read(all: typeof questions): Promise<Package> {
  const files = unzipSync(await packed(all, async () => new Uint8Array([1])));
  const named = Object.entries(files).filter(([name]) => name.startsWith('items/'));
  return {
    files: Object.keys(files),
    manifest: XmlDocument.fromBuffer(files['imsmanifest.xml'] ?? new Uint8Array()),
    items: named.map(([name, content]) => [name, XmlDocument.fromBuffer(content)]),
  };
}

const { files, manifest, items } = await read(questions);
const texts = (doc: XmlDocument, path: string) => doc.find(path, spaces).map((node) => node.content);

test('every question but one with a place on a drawing is an item', () => {
  expect(items).toHaveLength(questions.length - 1);
});

test('the manifest is valid, and names every file of the package once', () => {
  expect(() => schema.validate(manifest)).not.toThrow();
  const named = texts(manifest, '//m:file/@href');
  expect([...named, 'imsmanifest.xml'].sort()).toEqual([...files].sort());
  // libxml2 does not follow references.
  const identifiers = texts(manifest, '//m:resource/@identifier');
  const needed = texts(manifest, '//m:dependency/@identifierref');
  expect(needed.filter((one) => !identifiers.includes(one))).toEqual([]);
});

test.each([
  ['another standard', (text: string) => text.replace('QTI Package', 'Some Package')],
  ['another version', (text: string) => text.replace('3.0.0', '2.2.0')],
  ['no organizations', (text: string) => text.replace('<organizations/>', '')],
  [
    'metadata after resources',
    (text: string) => text.replace(/(<metadata>\s*<schema>.*?<\/metadata>)(.*?)(<\/manifest>)/s, '$2$1$3'),
  ],
  [
    'two resources of one name',
    (text: string) => text.replace(/(<resource [^>]*\/>|<resource .*?<\/resource>)/s, '$1$1'),
  ],
])('a manifest with %s would not be', (_, change) => {
  const text = manifest.toString();
  expect(change(text)).not.toBe(text);
  expect(() => schema.validate(XmlDocument.fromString(change(text)))).toThrow(XmlValidateError);
});

test.each(items)('%s is built of what the standard has, in its order', (_, { root }) => {
  expect(root.namespaceUri).toBe(ITEM_NAMESPACE);
  expect(structureFaults(root)).toEqual([]);
});

/** Cardinality and base type of the response that an interaction takes. */
const RESPONSES: Readonly<Record<string, readonly string[]>> = {
  'qti-choice-interaction': ['single identifier', 'multiple identifier'],
  'qti-order-interaction': ['ordered identifier'],
  'qti-text-entry-interaction': ['single float'],
  'qti-hotspot-interaction': ['single identifier'],
  'qti-extended-text-interaction': ['single string'],
};

test.each(items)('%s asks for a response of the kind that its interaction takes, and its key is one', (_, doc) => {
  const [interaction, ...others] = doc.find('//*[contains(local-name(), "-interaction")]', spaces) as {
    name?: string;
  }[];
  expect(others).toEqual([]);
  const [cardinality = ''] = texts(doc, '//q:qti-response-declaration/@cardinality');
  const [type = ''] = texts(doc, '//q:qti-response-declaration/@base-type');
  expect(RESPONSES[interaction?.name ?? '']).toContain(`${cardinality} ${type}`);
  if (type !== 'identifier') return;
  const offered = texts(doc, '//q:qti-simple-choice/@identifier | //q:qti-hotspot-choice/@identifier');
  for (const identifier of offered) expect(identifier).toMatch(/^[A-Za-z_][\w.-]*$/);
  const right = texts(doc, '//q:qti-correct-response/q:qti-value');
  expect(right.length).toBeGreaterThan(0);
  expect(right.length === 1 || cardinality !== 'single').toBe(true);
  for (const value of [...right, ...texts(doc, '//q:qti-map-entry/@map-key')]) expect(offered).toContain(value);
});

test.each(items)('%s declares every variable that it names, once', (_, doc) => {
  const declared = texts(doc, '/*/*[contains(local-name(), "-declaration")]/@identifier');
  expect(new Set(declared).size).toBe(declared.length);
  const named = texts(
    doc,
    '//q:qti-variable/@identifier | //q:qti-printed-variable/@identifier | //q:qti-set-template-value/@identifier' +
      ' | //q:qti-set-outcome-value/@identifier | //@response-identifier | //@outcome-identifier',
  );
  expect(named.filter((name) => !declared.includes(name))).toEqual([]);
});

test('HTML, pictures and addresses that somebody wrote into Markdown do nothing', () => {
  for (const [, doc] of items) {
    expect(doc.find('//q:script', spaces)).toEqual([]);
    for (const address of texts(doc, '//@href')) expect(address).toMatch(/^https:/);
    for (const source of texts(doc, '//@src')) expect(source).toMatch(/^\.\.\/pictures\/[0-9a-f]{20}\.webp$/);
  }
});

test('whatever a question says, its item is built as the standard has it', async () => {
  await fc.assert(
    fc.asyncProperty(anyWrittenQuestion, async (question) => {
      const made = await read([question]);
      schema.validate(made.manifest);
      expect(made.items.flatMap(([, { root }]) => structureFaults(root))).toEqual([]);
      for (const doc of [made.manifest, ...made.items.map(([, item]) => item)]) doc.dispose();
    }),
    { numRuns: 150, seed: 20_261_126 },
  );
});
