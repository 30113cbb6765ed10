import { measureAnswerQuestion } from './answer-question';
import { unbuilt, withCaseServer } from './case-server';
import { measureCases, measureMemory } from './cases';
import { measureCompetency, type Pair } from './competency';
import { measureDiagnosis } from './diagnosis';
import { measureEvidence } from './evidence';
import { measureExport } from './exchange';
import { measureFirstLoad } from './first-load';
import { measureGradebook } from './gradebook';
import { measureGrading } from './grading';
import { measureItemStatistics } from './item-statistics';
import { measurePassiveLine } from './passive-line';
import { measureQuestions } from './questions';
import { measureReadiness } from './readiness';
import { measureRigPoints } from './rig-points';
import { measureSet } from './sets';
import { measureNextTask } from './sitting';
import type { Spread } from './spread';
import { measureTakeReading } from './take-reading';
import { measureTrace } from './traces';

/** `measured` is the best round, which other work on the machine disturbs least; the rest says how rounds repeated. */
interface Figure {
  name: string;
  unit: string;
  measured: number;
  target?: { atMost: number } | { atLeast: number };
  rounds?: Spread;
  note?: string;
}

const BARE_PAGE_KB = 135;
const PAGE_ALLOWANCE_KB = 40;

async function measureLibrary(): Promise<Figure[]> {
  const passive = await measurePassiveLine();
  const points = measureRigPoints();
  const cases = measureCases(false);
  const traced = measureCases(true);
  const [prime, crank] = [measureTrace('prime'), measureTrace('crank')];
  const grading = measureGrading();
  const target = { atMost: 50 };
  return [
    { name: 'operating point with its temperatures', unit: 'µs', measured: points.whole.min, rounds: points.whole },
    { name: '… one cold solve', unit: 'µs', measured: points.solveAlone.min, target, rounds: points.solveAlone },
    { name: '… one warm solve', unit: 'µs', measured: points.warm.min, rounds: points.warm },
    {
      name: 'passive line of 12 pipes',
      unit: '× EPANET',
      measured: passive.ratio,
      target: { atMost: 0.7 },
      note: `${show(passive.oursMicroseconds)} over ${show(passive.epanetMicroseconds)} µs; medians × ${show(passive.median.ratio)}`,
    },
    {
      name: 'cases with all steady readings, one core',
      unit: '/s',
      measured: 1e3 / cases.min,
      target: { atLeast: 500 },
      note: `${spreadWords(cases)} ms each`,
    },
    {
      name: '… with all traces too',
      unit: '/s',
      measured: 1e3 / traced.min,
      note: `${spreadWords(traced)} ms each`,
    },
    {
      name: 'three minutes of priming and its decay',
      unit: 'ms',
      measured: prime.min,
      target: { atMost: 20 },
      rounds: prime,
    },
    { name: 'five seconds of cranking', unit: 'ms', measured: crank.min, target: { atMost: 50 }, rounds: crank },
    ...diagnosisFigures(),
    { name: 'grade of one attempt', unit: 'ms', measured: grading.min, rounds: grading },
    ...questionFigures(),
    ...setFigures(),
    ...statisticsFigures(),
    ...competencyFigures(),
    ...(await evidenceFigures()),
    ...readinessFigures(),
    ...exportFigures(),
    ...memoryFigures(),
  ];
}

function setFigures(): Figure[] {
  const set = measureSet();
  return [{ name: 'set of 60 seeded slots, certified', unit: 's', measured: set.min, rounds: set }];
}

function diagnosisFigures(): Figure[] {
  const { certificate, certificateHardest, belief, next, growth } = measureDiagnosis();
  return [
    {
      name: 'whole certificate of a case',
      unit: 'ms',
      measured: certificate.min,
      target: { atMost: 150 },
      rounds: certificate,
    },
    { name: '… at the hardest level', unit: 'ms', measured: certificateHardest.min, rounds: certificateHardest },
    { name: 'belief after a reading', unit: 'ms', measured: belief.min, target: { atMost: 5 }, rounds: belief },
    { name: 'next check, all that are open', unit: 'ms', measured: next.min, target: { atMost: 20 }, rounds: next },
    ...growth.map(({ particles, checks, milliseconds }) => ({
      name: `… with ${particles} particles × ${checks} checks`,
      unit: 'ms',
      measured: milliseconds,
      note: `${show((1e6 * milliseconds) / (particles * checks))} ns a particle and check`,
    })),
  ];
}

function questionFigures(): Figure[] {
  return measureQuestions().map(({ kind, milliseconds }) => ({
    name: `questions of the kind ${kind}, one core`,
    unit: '/s',
    measured: 1e3 / milliseconds.min,
    note: `${spreadWords(milliseconds)} ms each`,
  }));
}

function statisticsFigures(): Figure[] {
  const { items, reliability, plain } = measureItemStatistics();
  return [
    { name: 'item statistics over 200,000 responses', unit: 'ms', measured: items.min, rounds: items },
    {
      name: '… beside the same with plain lists',
      unit: '× plain',
      measured: items.min / plain.min,
      note: `${show(items.min)} over ${show(plain.min)} ms; medians × ${show(items.median / plain.median)}`,
    },
    { name: '… KR-20, whole and without each item', unit: 'ms', measured: reliability.min, rounds: reliability },
  ];
}

function competencyFigures(): Figure[] {
  const { update, rebuild, choice } = measureCompetency();
  return [
    ...besidePlain('13 topics after a response on each', 'µs', update),
    ...besidePlain('rebuild of a person with 5,000 responses', 'ms', rebuild),
    ...besidePlain('choice of a task from 2,000', 'ms', choice),
    ...besidePlain('next task of a new-hire check, from 2,000', 'ms', measureNextTask()),
  ];
}

function readinessFigures(): Figure[] {
  const { decisions, board } = measureReadiness();
  return [
    ...besidePlain('500 people × 13 topics: what their evidence says', 'ms', decisions),
    { name: '… with what fades within 90 days, as a board', unit: 'ms', measured: board.min, rounds: board },
  ];
}

async function evidenceFigures(): Promise<Figure[]> {
  const { boards, rebuild } = await measureEvidence();
  const asRows = 'from the rows, one after another';
  return [
    ...boards.flatMap(({ rows, ...pair }) =>
      besidePlain(`board of 500 people × 13 topics read, ${show(rows)} rows of evidence`, 'ms', pair, asRows),
    ),
    ...besidePlain('the same person through the database', 'ms', rebuild, asRows),
  ];
}

function besidePlain(
  name: string,
  unit: string,
  { ours, plain }: Pair,
  way = 'the formulas as they are written',
): Figure[] {
  return [
    { name, unit, measured: ours.min, rounds: ours },
    {
      name: `… beside ${way}`,
      unit: '× plain',
      measured: ours.min / plain.min,
      note: `${show(ours.min)} over ${show(plain.min)} ${unit}; medians × ${show(ours.median / plain.median)}`,
    },
  ];
}

function exportFigures(): Figure[] {
  const { seconds, peakMb, restMb, packageMb } = measureExport();
  return [
    {
      name: '10,000 questions as a QTI package',
      unit: 's',
      measured: seconds,
      note: `${show(packageMb)} MB of package`,
    },
    {
      name: '… highest memory of the process',
      unit: 'MB',
      measured: peakMb,
      note: `${show(restMb)} MB before it began`,
    },
  ];
}

function memoryFigures(): Figure[] {
  const memory = measureMemory();
  if (!memory) return [];
  return [
    {
      name: 'heap after 100,000 cases in one process',
      unit: '× after 10,000',
      measured: memory.late / memory.early,
      note: `${show(memory.late)} over ${show(memory.early)} MB`,
    },
  ];
}

async function measureSite(): Promise<Figure[]> {
  return withCaseServer(async (db) => {
    const load = await measureFirstLoad(db);
    const reading = await measureTakeReading(db);
    const answer = await measureAnswerQuestion(db);
    const book = await measureGradebook(db);
    return [
      {
        name: 'first-load script of the case page',
        unit: 'kB gzip',
        measured: load.casePageKb,
        target: { atMost: BARE_PAGE_KB + PAGE_ALLOWANCE_KB },
        note: `not-found page ${show(load.notFoundPageKb)} kB; a bare page of the framework ${BARE_PAGE_KB} kB`,
      },
      {
        name: 'server takes a reading, 95th percentile',
        unit: 'ms',
        measured: reading.p95,
        note: `median ${show(reading.median)} ms of ${reading.readings}`,
      },
      {
        name: 'server marks an answer of a drill, 95th percentile',
        unit: 'ms',
        measured: answer.p95,
        note: `median ${show(answer.median)} ms of ${answer.answers} over all kinds`,
      },
      {
        name: 'gradebook of 500 people × 60 assignments',
        unit: 'ms',
        measured: book.page.min,
        note: `${spreadWords(book.page)}; ${show(book.gzipKb)} kB gzip of ${show(book.kb)}`,
      },
    ];
  });
}

function table(figures: readonly Figure[]): string {
  const rows = figures.map(({ name, unit, measured, target, rounds, note }) => [
    name,
    `${show(measured)} ${unit}`,
    target ? ('atMost' in target ? `≤ ${target.atMost}` : `≥ ${target.atLeast}`) : '',
    note ?? (rounds ? spreadWords(rounds) : ''),
  ]);
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('   ')).join('\n');
}

function spreadWords({ median, mean, sd }: Spread): string {
  return `median ${show(median)}, mean ${show(mean)} ± ${show(sd)}`;
}

function show(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

const skipped = unbuilt();
const figures = [...(await measureLibrary()), ...(skipped ? [] : await measureSite())];
if (process.argv.includes('--json')) {
  console.log(JSON.stringify({ figures, ...(skipped && { skipped }) }, null, 2));
} else {
  console.log(table(figures));
  if (skipped) console.log(`Pages and server were not measured: ${skipped}`);
}
