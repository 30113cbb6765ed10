import { strToU8, unzipSync, Zip, ZipPassThrough } from 'fflate';
import { expect, test } from 'vitest';
import { readPackage, type TakePicture, type Taking } from '@/lib/interop/qti/read-package';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { itemOf, manifestOf, packageOf, packed, zipOf } from '../../support/packages';
import { aWrittenQuestion } from '../../support/written-questions';

const noPicture: TakePicture = async () => undefined;
const topics = new Set(['filtration', 'fuel-quality']);
const read = (bytes: Uint8Array, takePicture = noPicture, limits?: Taking['limits']) =>
  readPackage(bytes, { topic: 'filtration', topics, takePicture, ...(limits && { limits }) });

async function items(bytes: Uint8Array, takePicture = noPicture) {
  const back = await read(bytes, takePicture);
  if ('refused' in back) throw new Error(`${back.refused} ${back.what}`);
  return back.items;
}

const CHOICE = {
  declaration:
    '<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="identifier"><qti-correct-response><qti-value>B</qti-value></qti-correct-response></qti-response-declaration>',
  body: '<p>Which <strong>gauge</strong>?</p><qti-choice-interaction response-identifier="RESPONSE" shuffle="true" max-choices="1"><qti-prompt>Choose</qti-prompt><qti-simple-choice identifier="A">0–30 psi</qti-simple-choice><qti-simple-choice identifier="B">0–300 psi</qti-simple-choice></qti-choice-interaction>',
};

test('what we export comes back whole, places on a drawing among it, which no item can hold', async () => {
  const questions = writtenForms.filter((form) => form !== 'spot').map((form) => aWrittenQuestion(form));
  const back = await items(await packed(questions));
  expect(back.map((item) => ('question' in item ? item.question : item))).toEqual(questions);
});

test('a picture comes back as what its bytes are taken for', async () => {
  const bytes = new Uint8Array([1, 2, 3]);
  const zip = await packed([aWrittenQuestion('spot')], async () => bytes);
  const taken = { id: '0123456789abcdef0123', width: 80, height: 60 };
  const back = await items(zip, async (given) => (given.length === 3 ? taken : undefined));
  expect(back).toMatchObject([{ question: { body: { form: 'spot', picture: taken } }, warnings: [] }]);
});

test('a question whose picture is none is refused where it is answered on it, and taken without it otherwise', async () => {
  const beside = aWrittenQuestion('choice', { picture: { id: 'a'.repeat(20), width: 8, height: 6, alt: 'A filter' } });
  const zip = await packed([aWrittenQuestion('spot'), beside], async () => new Uint8Array([1]));
  const back = await items(zip);
  expect(back).toMatchObject([{ refused: 'picture-unusable' }, { warnings: ['picture-missing'] }]);
  expect(back[1]).not.toHaveProperty('question.picture');
});

test('the same questions make the same bytes, in whatever time zone', async () => {
  const questions = writtenForms.map((form) => aWrittenQuestion(form));
  const [first, second] = [await packed(questions), await packed(questions)];
  expect(Buffer.compare(first, second)).toBe(0);
  // Time and date as a zip writes them: the first of January 1980, at midnight.
  expect([...first.slice(10, 14)]).toEqual([0, 0, 0x21, 0]);
});

test('an item of ours that was changed elsewhere is taken as it is now, with what only our own file can say', async () => {
  const question = aWrittenQuestion('choice', { topics: ['fuel-quality'], difficulty: 1.5 });
  const files = unzipSync(await packed([question]));
  const [path = ''] = Object.keys(files).filter((name) => name.startsWith('items/'));
  const changed = new TextDecoder().decode(files[path]).replace('A dial gauge, 0–30 psi', 'A dial gauge, 0–60 psi');
  const back = await items(zipOf({ ...files, [path]: changed }));
  expect(back).toMatchObject([
    {
      question: {
        topics: ['fuel-quality'],
        difficulty: 1.5,
        body: { options: [{ id: 'one', text: 'A dial gauge, 0–60 psi' }, { id: 'two' }, { id: 'three' }] },
      },
      warnings: ['changed-elsewhere'],
    },
  ]);
});

test('an item of somebody else’s is taken with what it says, and a word on what it does not', async () => {
  expect(await items(packageOf(itemOf(CHOICE)))).toMatchObject([
    {
      question: {
        title: 'From elsewhere',
        stem: 'Which **gauge**?\n\nChoose',
        topics: ['filtration'],
        body: { form: 'choice', shuffle: true, right: 'b', options: [{ id: 'a', text: '0–30 psi' }, { id: 'b' }] },
      },
      warnings: ['explanation-missing', 'difficulty-assumed', 'topic-assumed', 'time-assumed'],
    },
  ]);
});

test('topics and time are taken from what the manifest says of an item', async () => {
  const lom =
    '<metadata><lom xmlns="http://ltsc.ieee.org/xsd/LOM"><general><keyword><string>fuel-quality</string></keyword><keyword><string>else</string></keyword></general><educational><typicalLearningTime><duration>PT1M30S</duration></typicalLearningTime></educational></lom></metadata>';
  const manifest = manifestOf('one.xml').replace('<file', `${lom}<file`);
  const back = await items(zipOf({ 'imsmanifest.xml': manifest, 'one.xml': itemOf(CHOICE) }));
  expect(back).toMatchObject([{ question: { topics: ['fuel-quality'], seconds: 90 } }]);
  expect(back).toMatchObject([{ warnings: ['explanation-missing', 'difficulty-assumed'] }]);
});

test('names under a prefix are the same names', async () => {
  const prefixed = itemOf(CHOICE)
    .replaceAll('<qti-', '<q:qti-')
    .replaceAll('</qti-', '</q:qti-')
    .replaceAll(/<(\/?)(p|strong)>/g, '<$1q:$2>')
    .replace('xmlns=', 'xmlns:q=');
  const [plain, same] = [await items(packageOf(itemOf(CHOICE))), await items(packageOf(prefixed))];
  expect(same).toEqual(plain);
});

test('signs by their numbers and character data are read as what they stand for', async () => {
  const body = CHOICE.body.replace('0–30 psi', '&#233;&#x1F527;<![CDATA[ a < b & c]]>');
  expect(await items(packageOf(itemOf({ ...CHOICE, body })))).toMatchObject([
    { question: { body: { options: [{ text: 'é\u{1F527} a \\< b \\& c' }, {}] } } },
  ]);
});

test('a number that templates draw is drawn here too', async () => {
  const item = itemOf({
    declaration: `<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="float"/>
<qti-template-declaration identifier="A" cardinality="single" base-type="integer"/><qti-template-declaration identifier="B" cardinality="single" base-type="float"/>
<qti-template-processing><qti-set-template-value identifier="A"><qti-random-integer min="2" max="10" step="2"/></qti-set-template-value>
<qti-set-template-value identifier="B"><qti-product><qti-variable identifier="A"/><qti-base-value base-type="float">6.9</qti-base-value></qti-product></qti-set-template-value>
<qti-set-correct-response identifier="RESPONSE"><qti-sum><qti-variable identifier="B"/><qti-base-value base-type="float">1</qti-base-value></qti-sum></qti-set-correct-response></qti-template-processing>`,
    body: '<p>It reads <qti-printed-variable identifier="A"/> psi.</p><p><qti-text-entry-interaction response-identifier="RESPONSE"/> kPa</p>',
    processing:
      '<qti-response-processing><qti-response-condition><qti-response-if><qti-equal tolerance-mode="relative" tolerance="3 3"><qti-variable identifier="RESPONSE"/><qti-correct identifier="RESPONSE"/></qti-equal></qti-response-if></qti-response-condition></qti-response-processing>',
  });
  expect(await items(packageOf(item))).toMatchObject([
    {
      question: {
        stem: 'It reads {A} psi.',
        body: {
          form: 'numbers',
          variables: [{ name: 'A', from: 2, to: 10, step: 2 }],
          formula: '((A * 6.9) + 1)',
          tolerance: { kind: 'percent', amount: 3 },
        },
      },
    },
  ]);
});

test.each(['match_correct', 'match_correct.xml', 'map_response', 'map_response.xml'])(
  'processing by %s is taken',
  async (template) => {
    const processing = `<qti-response-processing template="https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/${template}"/>`;
    const back = await read(packageOf(itemOf({ ...CHOICE, processing })));
    expect('items' in back && back.items).toMatchObject([{ question: { body: { right: 'b' } } }]);
    expect('items' in back && back.items).not.toMatchObject([
      { warnings: expect.arrayContaining(['marking-dropped']) },
    ]);
  },
);

/** A zip with one name twice, which no file system would make. */
function twice(name: string): Uint8Array {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((_, piece) => pieces.push(piece));
  for (const content of ['first', 'second']) {
    const file = new ZipPassThrough(name);
    zip.add(file);
    file.push(strToU8(content), true);
  }
  zip.end();
  return new Uint8Array(Buffer.concat(pieces));
}

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
  ['a file beyond all measure', zipOf({ 'big.bin': new Uint8Array(17 * 2 ** 20) }), 'bomb', 'big.bin'],
  ['the same name twice', twice('one.xml'), 'file-twice', 'one.xml'],
  ['a manifest of nothing', zipOf({ 'imsmanifest.xml': manifestOf() }), 'nothing-in-it', ''],
  [
    'a manifest with entities',
    zipOf({ 'imsmanifest.xml': `<!DOCTYPE m [<!ENTITY a "b">]>${manifestOf('one.xml')}` }),
    'doctype',
    'DOCTYPE',
  ],
])('%s is refused', async (_, bytes, refused, what) => {
  const back = await read(await bytes);
  expect(back).toMatchObject({ refused, ...(what && { what }) });
});

test('more files than there is room for are refused', async () => {
  const limits = { files: 20, fileBytes: 100, totalBytes: 1000, ratio: 100 };
  expect(await read(zipOf(several(21)), noPicture, limits)).toMatchObject({ refused: 'too-many-files' });
});

test('a bomb is refused by what comes out of it, whatever it says of itself', async () => {
  const bomb = zipOf({ 'a.txt': new Uint8Array(4 * 2 ** 20), 'b.txt': new Uint8Array(4 * 2 ** 20) });
  expect(bomb.length).toBeLessThan(20_000);
  const limits = { files: 20, fileBytes: 8 * 2 ** 20, totalBytes: 6 * 2 ** 20, ratio: 1e6 };
  expect(await read(bomb, noPicture, limits)).toMatchObject({ refused: 'too-large', what: 'b.txt' });
  expect(await read(bomb)).toMatchObject({ refused: 'bomb', what: 'a.txt' });
});

test('a size that a file says it has counts for nothing', async () => {
  const bomb = zipOf({ 'a.txt': new Uint8Array(4 * 2 ** 20) });
  // Size before packing, in the head of the file and in the directory. @source PKWARE APPNOTE 4.3.7, 4.3.12, from memory
  const directory = Buffer.from(bomb).indexOf('PK\u0001\u0002', 0, 'latin1');
  for (const at of [22, directory + 24]) bomb.set([1, 0, 0, 0], at);
  expect(await read(bomb)).toMatchObject({ refused: 'bomb', what: 'a.txt' });
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
  ['an entity that nobody declared', itemOf({ ...CHOICE, body: `&xxe;${CHOICE.body}` }), 'entity', '&xxe;'],
  ['a sign that XML has no room for', itemOf({ ...CHOICE, body: `&#0;${CHOICE.body}` }), 'not-xml'],
  ['two attributes of one name', itemOf(CHOICE).replace('title=', 'title="a" title='), 'not-xml'],
  ['an attribute without end', itemOf(CHOICE).replace('From elsewhere', 'x'.repeat(20_000)), 'attribute-long'],
  ['an item of another name space', itemOf(CHOICE).replace('imsqtiasi_v3p0', 'imsqti_v2p2'), 'not-qti-3'],
  ['a file larger than an item is', itemOf({ ...CHOICE, body: ' '.repeat(2 ** 20) }), 'too-large'],
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

test('what is refused says on which line', async () => {
  const item = itemOf({ ...CHOICE, body: '<p>\n\n</p>\n<qti-match-interaction response-identifier="RESPONSE"/>' });
  expect(await items(packageOf(item))).toMatchObject([{ refused: 'unknown-interaction', line: 5 }]);
});

test('what a question has wrong is said by its field', async () => {
  const item = itemOf({ ...CHOICE, declaration: CHOICE.declaration.replace('>B<', '>Z<') });
  expect(await items(packageOf(item))).toMatchObject([
    {
      refused: 'not-valid',
      title: 'From elsewhere',
      issues: expect.arrayContaining([expect.objectContaining({ path: ['body', 'right'] })]),
    },
  ]);
});

test('a link of somebody else’s leads to the web or nowhere', async () => {
  const body = `<p><a href="javascript:alert(1)">one</a> <a href="https://shop.example/a">two</a></p>${CHOICE.body}`;
  expect(await items(packageOf(itemOf({ ...CHOICE, body })))).toMatchObject([
    { question: { stem: expect.stringContaining('one [two](https://shop.example/a)') } },
  ]);
});
