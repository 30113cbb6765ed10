import { expect, test } from 'vitest';
import { readPackage, type TakePicture } from '@/lib/interop/qti/read-package';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { itemOf, manifestOf, packageOf, packed, zipOf } from '../../support/packages';
import { aWrittenQuestion } from '../../support/written-questions';

const noPicture: TakePicture = async () => undefined;
const read = (bytes: Uint8Array, takePicture = noPicture, limits?: Parameters<typeof readPackage>[1]['limits']) =>
  readPackage(bytes, { topic: 'filtration', takePicture, ...(limits && { limits }) });

const CHOICE = {
  declaration:
    '<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="identifier"><qti-correct-response><qti-value>B</qti-value></qti-correct-response></qti-response-declaration>',
  body: '<p>Which <strong>gauge</strong>?</p><qti-choice-interaction response-identifier="RESPONSE" shuffle="true" max-choices="1"><qti-prompt>Choose</qti-prompt><qti-simple-choice identifier="A">0–30 psi</qti-simple-choice><qti-simple-choice identifier="B">0–300 psi</qti-simple-choice></qti-choice-interaction>',
};

test('what we export comes back whole, but for places on a drawing, which no item can hold', async () => {
  const questions = writtenForms.filter((form) => form !== 'spot').map((form) => aWrittenQuestion(form));
  const { bytes, lines } = await packed(questions);
  const back = await read(bytes);
  if ('refused' in back) throw new Error(back.refused);
  const kept = questions.filter(({ body }) => body.form !== 'point');
  expect(back.items.map((item) => ('question' in item ? item.question : item))).toEqual(kept);
  expect(lines.find(({ title }) => title.includes('point'))?.losses).toEqual(['place-on-drawing']);
});

test('a picture comes back as what its bytes are taken for', async () => {
  const question = aWrittenQuestion('spot');
  const bytes = new Uint8Array([1, 2, 3]);
  const { bytes: zip } = await packed([question], async () => bytes);
  const taken = { id: '0123456789abcdef0123', width: 80, height: 60 };
  const back = await read(zip, async (given) => (given.length === 3 ? taken : undefined));
  if ('refused' in back) throw new Error(back.refused);
  expect(back.items).toMatchObject([{ question: { body: { form: 'spot', picture: taken } }, warnings: [] }]);
});

test('the same questions make the same bytes', async () => {
  const questions = writtenForms.map((form) => aWrittenQuestion(form));
  expect(Buffer.compare((await packed(questions)).bytes, (await packed(questions)).bytes)).toBe(0);
});

test('an item of somebody else’s is taken with what it says, and a word on what it does not', async () => {
  const back = await read(packageOf(itemOf(CHOICE)));
  if ('refused' in back) throw new Error(back.refused);
  expect(back.items).toMatchObject([
    {
      question: {
        title: 'From elsewhere',
        stem: 'Which **gauge**?\n\nChoose',
        topics: ['filtration'],
        body: { form: 'choice', shuffle: true, right: 'b', options: [{ id: 'a', text: '0–30 psi' }, { id: 'b' }] },
      },
      warnings: ['topic-assumed', 'explanation-missing'],
    },
  ]);
});

test.each(['match_correct', 'match_correct.xml', 'map_response', 'map_response.xml'])(
  'processing by %s is taken',
  async (template) => {
    const processing = `<qti-response-processing template="https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/${template}"/>`;
    const back = await read(packageOf(itemOf({ ...CHOICE, processing })));
    expect('items' in back && 'question' in (back.items[0] ?? {})).toBe(true);
  },
);

const several = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, index) => [`f${index}.txt`, 'x']));

test.each<[string, Uint8Array | Promise<Uint8Array>, string, string]>([
  ['what is no zip', new TextEncoder().encode('not a zip at all, only text'), 'not-a-zip', ''],
  ['nothing at all', new Uint8Array(), 'not-a-zip', ''],
  ['a zip that breaks off', packageOf(itemOf(CHOICE)).slice(0, 200), 'not-a-zip', ''],
  ['a package without a manifest', zipOf({ 'items/one.xml': itemOf(CHOICE) }), 'no-manifest', ''],
  ['a way up', zipOf({ '../../etc/passwd': 'x' }), 'bad-path', '../../etc/passwd'],
  ['a way from the root', zipOf({ '/etc/passwd': 'x' }), 'bad-path', '/etc/passwd'],
  ['a way of another system', zipOf({ 'items\\..\\one.xml': 'x' }), 'bad-path', 'items\\..\\one.xml'],
  ['a drive', zipOf({ 'C:one.xml': 'x' }), 'bad-path', 'C:one.xml'],
  [
    'a manifest of another standard',
    zipOf({ 'imsmanifest.xml': '<manifest xmlns="http://example.org/x"/>' }),
    'not-qti-3',
    'manifest',
  ],
  ['a manifest that is no XML', zipOf({ 'imsmanifest.xml': '<manifest' }), 'not-xml', ''],
  ['a file beyond all measure', zipOf({ 'big.bin': new Uint8Array(9 * 2 ** 20) }), 'too-large', 'big.bin'],
])('%s is refused', async (_, bytes, refused, what) => {
  const back = await read(await bytes);
  expect(back).toMatchObject({ refused, ...(what && { what }) });
});

test('more files than there is room for are refused', async () => {
  const limits = { files: 20, fileBytes: 100, totalBytes: 1000 };
  expect(await read(zipOf(several(21)), noPicture, limits)).toMatchObject({ refused: 'too-many-files' });
});

test('a bomb is refused by what comes out of it, whatever it says of itself', async () => {
  const bomb = zipOf({ 'a.txt': new Uint8Array(4 * 2 ** 20), 'b.txt': new Uint8Array(4 * 2 ** 20) });
  expect(bomb.length).toBeLessThan(20_000);
  const limits = { files: 20, fileBytes: 8 * 2 ** 20, totalBytes: 6 * 2 ** 20 };
  expect(await read(bomb, noPicture, limits)).toMatchObject({ refused: 'too-large', what: 'b.txt' });
});

const ENTITY = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]>';
const deep = `${'<div>'.repeat(200)}${'</div>'.repeat(200)}`;

test.each<[string, string, string, string?]>([
  ['an entity bomb', itemOf(CHOICE).replace('<qti-assessment-item', `${ENTITY}<qti-assessment-item`), 'doctype'],
  [
    'a file elsewhere',
    itemOf(CHOICE).replace('<qti-assessment-item', '<!DOCTYPE x SYSTEM "file:///etc/passwd"><qti-assessment-item'),
    'doctype',
  ],
  ['XML without end', itemOf(CHOICE).slice(0, -30), 'not-xml'],
  ['nesting without end', itemOf({ ...CHOICE, body: deep }), 'too-deep'],
  ['another encoding', itemOf(CHOICE).replace('UTF-8', 'UTF-16'), 'not-utf-8'],
  ['another item', '<assessmentItem xmlns="http://www.imsglobal.org/xsd/imsqti_v2p2"/>', 'not-qti-3', 'assessmentItem'],
  [
    'an interaction that we have no form for',
    itemOf({ ...CHOICE, body: '<qti-match-interaction response-identifier="RESPONSE"/>' }),
    'unknown-interaction',
    'qti-match-interaction',
  ],
  ['two interactions', itemOf({ ...CHOICE, body: CHOICE.body + CHOICE.body }), 'several-interactions'],
  ['no key', itemOf({ ...CHOICE, declaration: '' }), 'no-key', 'qti-correct-response'],
  [
    'a key that is no option',
    itemOf({ ...CHOICE, declaration: CHOICE.declaration.replace('>B<', '>Z<') }),
    'not-valid',
  ],
])('%s is refused, and the file is named', async (_, item, refused, what) => {
  const back = await read(packageOf(item));
  expect('items' in back && back.items).toMatchObject([{ refused, file: 'items/one.xml', ...(what && { what }) }]);
});

test('what one item has wrong does not keep the others out', async () => {
  const zip = zipOf({
    'imsmanifest.xml': manifestOf('one.xml', 'gone.xml', '../up.xml'),
    'one.xml': itemOf(CHOICE),
  });
  const back = await read(zip);
  if ('refused' in back) throw new Error(back.refused);
  expect(back.items).toMatchObject([{ file: 'one.xml' }, { refused: 'file-missing' }, { refused: 'bad-path' }]);
  expect(back.items[0]).toHaveProperty('question');
});

test('scripts, media and pictures from elsewhere are dropped, and said to be', async () => {
  const body = `<p>Look<script>alert(1)</script><img src="https://example.org/x.png" alt="x"/></p>${CHOICE.body}`;
  const back = await read(packageOf(itemOf({ ...CHOICE, body })));
  if ('refused' in back) throw new Error(back.refused);
  expect(JSON.stringify(back.items)).not.toMatch(/alert|example\.org/);
  expect(back.items).toMatchObject([{ warnings: expect.arrayContaining(['markup-dropped', 'picture-missing']) }]);
});
