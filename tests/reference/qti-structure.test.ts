import { unzipSync } from 'fflate';
import { XmlDocument } from 'libxml2-wasm';
import { expect, test } from 'vitest';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { packed } from '../support/packages';
import { aWrittenQuestion } from '../support/written-questions';

/**
 * Packages against the structure of the standard, read by another parser than ours (libxml2).
 *
 * @source 1EdTech QTI 3.0 and IMS Content Packaging 1.2, as ../shared/reference/competency.md 4.3 gives them: namespaces,
 *   schema and version, resource types, element order of an item. The official schema files could not be had here in a form
 *   that may be kept beside the tests, so that this is their structure and not their validation.
 */
const MANIFEST_NAMESPACE = 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1';
const ITEM_NAMESPACE = 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0';

/** Parts of an item, in the order in which they stand. */
const ITEM_ORDER = [
  'qti-response-declaration',
  'qti-outcome-declaration',
  'qti-template-declaration',
  'qti-template-processing',
  'qti-item-body',
  'qti-response-processing',
  'qti-modal-feedback',
];

/** Cardinality and base type of the response that an interaction takes. */
const RESPONSES: Readonly<Record<string, readonly string[]>> = {
  'qti-choice-interaction': ['single identifier', 'multiple identifier'],
  'qti-order-interaction': ['ordered identifier'],
  'qti-text-entry-interaction': ['single float'],
  'qti-hotspot-interaction': ['single identifier'],
  'qti-extended-text-interaction': ['single string'],
};

const nasty = 'A < B & "C" ]]> \u{1F527} ü';
const questions = [
  ...writtenForms.map((form) => aWrittenQuestion(form)),
  aWrittenQuestion('choice', { title: nasty, stem: `${nasty}\n\n- one\n- *two*\n\n<script>alert(1)</script>` }),
  aWrittenQuestion('numbers', { body: { formula: 'sqrt(before) * max(after, 2) / -3 + pi ^ 2' } }),
  aWrittenQuestion('numbers', { body: { formula: 'round(before / after)' } }),
];

async function files(): Promise<[string, XmlDocument][]> {
  const { bytes } = await packed(questions, async () => new Uint8Array([1]));
  const entries = Object.entries(unzipSync(bytes)).filter(([name]) => name.endsWith('.xml'));
  return entries.map(([name, content]) => [name, XmlDocument.fromBuffer(content)]);
}

const all = await files();
const items = all.filter(([name]) => name.startsWith('items/'));
const q = { q: ITEM_NAMESPACE, m: MANIFEST_NAMESPACE };
const texts = (doc: XmlDocument, path: string) => doc.find(path, q).map((node) => node.content);

test('every question but one with a place on a drawing is an item', () => {
  expect(items).toHaveLength(questions.length - 1);
});

test('the manifest names its standard, and every file of the package once', async () => {
  const [, manifest] = all.find(([name]) => name === 'imsmanifest.xml') ?? [];
  if (!manifest) throw new Error('no manifest');
  expect(manifest.root.namespaceUri).toBe(MANIFEST_NAMESPACE);
  expect(texts(manifest, '/m:manifest/m:metadata/m:schema')).toEqual(['QTI Package']);
  expect(texts(manifest, '/m:manifest/m:metadata/m:schemaversion')).toEqual(['3.0.0']);
  const { bytes } = await packed(questions, async () => new Uint8Array([1]));
  const named = texts(manifest, '//m:file/@href');
  expect(new Set(named).size).toBe(named.length);
  expect([...named, 'imsmanifest.xml'].sort()).toEqual(Object.keys(unzipSync(bytes)).sort());
  const identifiers = texts(manifest, '//m:resource/@identifier');
  expect(new Set(identifiers).size).toBe(identifiers.length);
  for (const identifier of identifiers) expect(identifier).toMatch(/^[A-Za-z_][\w.-]*$/);
  for (const needed of texts(manifest, '//m:dependency/@identifierref')) expect(identifiers).toContain(needed);
});

test.each(items)('%s has its parts in the order of the standard, each with what it must have', (_, doc) => {
  const { root } = doc;
  expect([root.name, root.namespaceUri]).toEqual(['qti-assessment-item', ITEM_NAMESPACE]);
  for (const needed of ['identifier', 'title', 'adaptive', 'time-dependent'])
    expect(texts(doc, `/q:qti-assessment-item/@${needed}`)).toHaveLength(1);
  const parts = doc
    .find('/q:qti-assessment-item/*', q)
    .map((node) => ITEM_ORDER.indexOf((node as { name?: string }).name ?? ''));
  expect(parts).not.toContain(-1);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
});

test.each(items)('%s asks for a response of the kind that its interaction takes', (_, doc) => {
  const [interaction, ...others] = doc.find('//*[contains(local-name(), "-interaction")]', q) as { name?: string }[];
  expect(others).toEqual([]);
  const [cardinality = ''] = texts(doc, '//q:qti-response-declaration/@cardinality');
  const [type = ''] = texts(doc, '//q:qti-response-declaration/@base-type');
  expect(RESPONSES[interaction?.name ?? '']).toContain(`${cardinality} ${type}`);
  const offered = texts(doc, '//q:qti-simple-choice/@identifier | //q:qti-hotspot-choice/@identifier');
  for (const identifier of offered) expect(identifier).toMatch(/^[A-Za-z_][\w.-]*$/);
  if (type === 'identifier') {
    const right = texts(doc, '//q:qti-correct-response/q:qti-value');
    expect(right.length).toBeGreaterThan(0);
    for (const value of [...right, ...texts(doc, '//q:qti-map-entry/@map-key')]) expect(offered).toContain(value);
  }
});

test('numbers that a question draws are declared before they are used', () => {
  const drawn = items.filter(([, doc]) => texts(doc, '//q:qti-template-declaration/@identifier').length > 0);
  expect(drawn.length).toBeGreaterThan(0);
  for (const [, doc] of drawn) {
    const declared = texts(doc, '//q:qti-template-declaration/@identifier');
    const used = texts(
      doc,
      '//q:qti-template-processing//q:qti-variable/@identifier | //q:qti-printed-variable/@identifier',
    );
    for (const name of used) expect(declared).toContain(name);
  }
});

test('HTML that somebody wrote stays text', () => {
  for (const [, doc] of items) expect(doc.find('//q:script', q)).toEqual([]);
});
