import { describe, expect, test } from 'vitest';
import { readQuestionsCsv } from '@/lib/interop/questions-csv/read-questions-csv';
import { questionsCsvHead, questionsCsvLines } from '@/lib/interop/questions-csv/write-questions-csv';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { aWrittenQuestion } from '../../support/written-questions';

const CHOICE = [
  'title,form,stem,topics,explanation,option_1,option_2,right',
  'One,choice,What?,filtration,So.,this,that,2',
].join('\n');

function rows(text: string) {
  const read = readQuestionsCsv(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.rows;
}

/** The columns that a row has something wrong in. */
function columnsWrong(text: string): string[] {
  const [row] = rows(text);
  return row && 'faults' in row ? row.faults.map((fault) => ('column' in fault ? fault.column : 'cells')) : [];
}

test('a row that says no more than it must is a question with what is usual', () => {
  expect(rows(CHOICE)).toEqual([
    {
      line: 2,
      question: {
        title: 'One',
        stem: 'What?',
        topics: ['filtration'],
        difficulty: 0,
        seconds: 60,
        explanation: 'So.',
        body: {
          form: 'choice',
          shuffle: true,
          options: [
            { id: 'option-1', text: 'this' },
            { id: 'option-2', text: 'that' },
          ],
          right: 'option-2',
        },
      },
    },
  ]);
});

test.each([';', '\t'])('a spreadsheet may part its cells by %j', (sign) => {
  expect(rows(CHOICE.replaceAll(',', sign))).toEqual(rows(CHOICE));
});

test('a fraction may stand behind a comma', () => {
  const text = CHOICE.replace('stem,', 'stem,difficulty,').replace('What?,', 'What?,"-1,5",');
  expect(rows(text)).toMatchObject([{ question: { difficulty: -1.5 } }]);
});

test('what a spreadsheet would compute is not, whatever field it stands in', () => {
  const nasty = aWrittenQuestion('choice', {
    title: '=HYPERLINK("https://shop.example")',
    stem: '@SUM(1)\n-2',
    explanation: '+1',
  });
  const csv = questionsCsvHead() + questionsCsvLines([nasty]);
  for (const guarded of [`"'=HYPERLINK`, `"'@SUM`, `"'+1`]) expect(csv).toContain(guarded);
  expect(csv).not.toMatch(/(^|,)"[=+@-]/m);
  expect(rows(csv)).toMatchObject([{ question: { title: nasty.title, stem: nasty.stem, explanation: '+1' } }]);
});

test('what has a picture is left out, and nothing else', () => {
  const picture = { id: 'a'.repeat(20), width: 8, height: 6, alt: 'A filter' };
  const questions = [...writtenForms.map((form) => aWrittenQuestion(form)), aWrittenQuestion('choice', { picture })];
  const read = rows(questionsCsvHead() + questionsCsvLines(questions));
  expect(read.map((row) => 'question' in row && row.question.body.form)).toEqual(
    writtenForms.filter((form) => form !== 'spot'),
  );
});

describe('a row that is not right names', () => {
  test.each([
    ['an unknown form', CHOICE.replace('choice', 'chioce'), ['form']],
    ['a missing text', CHOICE.replace('What?', ''), ['stem']],
    ['a missing topic', CHOICE.replace('filtration', ''), ['topics']],
    ['a key that is no option', CHOICE.replace(',2', ',3'), ['right']],
    ['two keys where one is right', CHOICE.replace(',2', ',1;2'), ['right']],
    ['options alike', CHOICE.replace('that', 'this'), ['option_2']],
    ['one option', CHOICE.replace('this,that', 'this,'), ['option_1', 'right']],
    ['more cells than columns', `${CHOICE},more`, ['cells']],
    ['a number that is none', CHOICE.replace('stem,', 'stem,seconds,').replace('What?,', 'What?,soon,'), ['seconds']],
    [
      'a word that is neither yes nor no',
      CHOICE.replace('stem,', 'stem,shuffle,').replace('What?,', 'What?,maybe,'),
      ['shuffle'],
    ],
    [
      'a formula and a range',
      'title,form,stem,topics,explanation,variables,formula,tolerance\nOne,numbers,What?,filtration,So.,a=1:2,a +,0.1',
      ['variables'],
    ],
    [
      'a formula',
      'title,form,stem,topics,explanation,variables,formula,tolerance\nOne,numbers,What?,filtration,So.,a=1:2:1,a +,0.1',
      ['formula'],
    ],
    [
      'a tolerance that is missing',
      'title,form,stem,topics,explanation,formula\nOne,numbers,What?,filtration,So.,1 + 1',
      ['tolerance'],
    ],
  ])('%s', (_, text, columns) => expect(columnsWrong(text)).toEqual(columns));
});

test('the line of a row counts those that a cell before it takes', () => {
  const text = `${CHOICE.replace('What?', '"What\nnow\n?"')}\n\nTwo,none`;
  expect(rows(text).map(({ line }) => line)).toEqual([2, 6]);
});

test.each([
  ['nothing', '', 'empty'],
  ['a head alone', 'title,form', 'empty'],
  ['no such columns', 'a,b\n1,2', 'no-columns'],
  ['a column twice', 'title,form,title\n1,2,3', 'columns-twice'],
  ['a quote that does not end', 'title,form\n"one,choice', 'unread'],
  ['more rows than are taken', `title,form\n${'a,b\n'.repeat(2001)}`, 'too-many-rows'],
])('%s is refused as a whole', (_, text, problem) => expect(readQuestionsCsv(text)).toEqual({ problem }));
