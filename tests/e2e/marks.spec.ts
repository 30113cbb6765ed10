import { eq } from 'drizzle-orm';
import { listLogEntries } from '@/db/queries/log-entries';
import { marking } from '@/db/queries/question-marks';
import { assignments, calibrations, regrades, turnResults, turns, turnTasks } from '@/db/schema';
import { together } from '@/db/together';
import { randomStream } from '@/lib/random';
import { aMark, begin } from '../support/sitting-rows';
import { addAssignment, addSet, addTurn, aSetBody, someRules } from '../support/teaching-rows';
import { press } from './at-assignments';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

let instructor: Somebody;
let assignmentId: string;

/** Two questions; of four learners two were right at the first, all at the second. */
test.beforeAll(async () => {
  instructor = await somebodyNew('instructor');
  const { organizationId } = instructor;
  const db = shared();
  const item = { kind: 'questions', questionKind: 'judge', topic: 'filtration', count: 1 } as const;
  const body = aSetBody({
    items: [
      { ...item, id: 'a' },
      { ...item, id: 'b' },
    ],
  });
  const { versionId } = await addSet(db, {
    id: `set-of-${organizationId}`,
    organizationId,
    createdBy: instructor.id,
    body,
  });
  assignmentId = `marks-of-${organizationId}`;
  const created = { organizationId, createdBy: instructor.id, setVersionId: versionId };
  await addAssignment(db, { id: assignmentId, ...created, rules: someRules() });
  for (const option of ['a', 'a', 'b', 'b']) {
    const learner = await somebodyNew('learner', organizationId);
    const sittingId = `sitting of ${learner.id}`;
    await begin(db, { id: sittingId, learnerId: learner.id, organizationId, key: sittingId }, 2);
    const first = { credit: option === 'a' ? 1 : 0, score: option === 'a' ? 1 : 0, notes: [] };
    await together(db, [
      marking(db, aMark({ sittingId, place: 1, answer: { form: 'choice', option }, mark: first })),
      marking(db, aMark({ sittingId, place: 2 })),
    ]);
    const turn = { id: `turn of ${learner.id}`, assignmentId, learnerId: learner.id, organizationId, sittingId };
    await addTurn(db, { ...turn, handedInAt: new Date(Date.UTC(2026, 0, 5)) });
    await db.insert(turnTasks).values([1, 2].map((place) => ({ turnId: turn.id, place, sittingPlace: place })));
  }
});

test.beforeEach(({ page }) => signInNew(page, instructor));

const totals = async () => {
  const rows = await shared()
    .select({ total: turnResults.total })
    .from(turnResults)
    .innerJoin(turns, eq(turns.id, turnResults.turnId))
    .where(eq(turns.assignmentId, assignmentId));
  return rows.map(({ total }) => total).sort((a, b) => a - b);
};

test('a further right answer is looked at, made with a reason, and undone', async ({ page }) => {
  await page.goto(`/assignments/${assignmentId}/marks`);
  await page.getByRole('region', { name: 'A further right answer' }).getByLabel('Task').selectOption('1');
  await page.getByRole('button', { name: 'Show its options' }).click();
  await expect(page.getByRole('checkbox', { name: /^This/ })).toBeDisabled();
  await page.getByRole('checkbox', { name: 'That' }).check();
  await page
    .getByRole('group', { name: 'Right too' })
    .locator('..')
    .getByRole('button', { name: 'See who moves' })
    .click();
  await expect(page.getByText('2 turns move, 2 stay. The mean goes from 75.0 to 100.0.')).toBeVisible();
  await expect(page.getByRole('cell', { name: '+50.0' })).toHaveCount(2);
  await expectClean(page);
  expect(await totals()).toEqual([50, 50, 100, 100]);
  await page.getByLabel('Reason, which learners read').fill('That is what the sheet says too');
  await page.getByRole('button', { name: 'Change the marks' }).click();
  // The same sentence stood in the preview.
  const changes = page.getByRole('region', { name: 'Changes made' });
  await expect(changes.getByText('At task 1 a further answer counts as right.')).toBeVisible();
  expect(await totals()).toEqual([]);
  await page.goto('/gradebook');
  await expect(page.getByRole('link', { name: '100' })).toHaveCount(4);
  await page.goto(`/assignments/${assignmentId}/marks`);
  await page.getByRole('button', { name: 'Undo this change' }).click();
  await expect(page.getByText(/^Undone by/)).toBeVisible();
  await page.goto('/gradebook');
  await expect(page.getByRole('link', { name: '50' })).toHaveCount(2);
  const [undone, made] = await listLogEntries(shared(), instructor.organizationId, {}, 2);
  expect([made?.event, undone?.event]).toEqual(['marks-changed', 'marks-change-undone']);
});

test('weights that do not sum to a hundred are refused in a sentence, and a task is withdrawn', async ({ page }) => {
  await page.goto(`/assignments/${assignmentId}/marks?kind=weights&verdicts=50&reasons=0&call=0&route=0&practice=0`);
  await expect(page.getByRole('alert').filter({ hasText: 'must sum to 100' })).toBeVisible();
  await page.goto(`/assignments/${assignmentId}/marks?kind=withdraw&place=1`);
  await expect(page.getByText('2 turns move, 2 stay. The mean goes from 75.0 to 100.0.')).toBeVisible();
});

test('what cannot be changed is refused, whatever a browser sends', async ({ page }) => {
  await page.goto(`/assignments/${assignmentId}/marks?kind=withdraw&place=9`);
  await expect(page.getByRole('alert').filter({ hasText: 'This change cannot be' })).toBeVisible();
  for (const change of [
    { kind: 'withdraw', place: 9 },
    { kind: 'key', place: 1, right: ['no-option'] },
    { kind: 'weights', weights: { verdicts: 20, reasons: 20, call: 20, route: 20, practice: 20 } },
    { kind: 'guess', place: 1 },
  ]) {
    const fields = { assignmentId, change: JSON.stringify(change), reason: 'Because' };
    const { text } = await press(instructor, `/assignments/${assignmentId}/marks`, 'changeMarks', fields);
    expect(text).toContain('This change of marks cannot be read');
  }
  const made = await shared().select().from(regrades).where(eq(regrades.assignmentId, assignmentId));
  expect(made.filter(({ undoneAt }) => !undoneAt)).toEqual([]);
});

test('how the tasks worked is said in figures and in words', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`/assignments/${assignmentId}/statistics`);
  await expect(page.getByText('4 people handed in a first turn.')).toBeVisible();
  const first = page.getByRole('region', { name: 'Task 1: question' });
  await expect(first.getByText('50 %', { exact: true })).toBeVisible();
  await first.getByText('What was chosen').click();
  await expect(first.getByText('This (right): 2. They earned 100 % elsewhere.')).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'Task 2: question' }).getByText('Everybody earned the same here.'),
  ).toBeVisible();
  await expect(page.getByText('There are not enough answers yet')).toBeVisible();
  await expectNoOverflow(page);
  await expectClean(page);
});

test('marks and figures of another organisation look like none', async ({ page }) => {
  await signInNew(page, await somebodyNew('instructor'));
  for (const name of ['marks', 'statistics']) {
    expect((await page.request.get(`/assignments/${assignmentId}/${name}`)).status()).toBe(404);
    expect((await page.request.get(`/assignments/no-such/${name}`)).status()).toBe(404);
  }
});

test('refitted difficulties are a proposal, accepted between windows alone', async ({ page }) => {
  const db = shared();
  const { organizationId } = instructor;
  const items = [1, 2, 3, 4].map((n) => ({ id: `i${n}`, kind: 'questions', count: 1, topic: 'filtration' }) as const);
  const set = { id: `refit-set-of-${organizationId}`, organizationId, createdBy: instructor.id };
  const { versionId } = await addSet(db, { ...set, body: aSetBody({ items }) });
  const id = `refit-of-${organizationId}`;
  const closesAt = new Date(Date.now() + 86_400_000);
  const created = { organizationId, createdBy: instructor.id, setVersionId: versionId };
  await addAssignment(db, { id, ...created, closesAt });
  const draw = randomStream('refit', 'who solves what');
  for (let person = 0; person < 40; person++) {
    const turnId = `${id}-turn-${person}`;
    const handedInAt = new Date(Date.UTC(2026, 0, 5));
    await addTurn(db, { id: turnId, assignmentId: id, learnerId: `learner-${person}`, organizationId, handedInAt });
    const able = draw.between(-1, 1);
    const tasks = [-1, -0.4, 0.4, 1].map((difficulty, index) => {
      const right = draw.next() < 1 / (1 + Math.exp(difficulty - able));
      const [share, seconds] = [Number(right), draw.between(20, 90)];
      const rest = { kind: 'question', chose: null, withdrawn: false } as const;
      return { place: index + 1, share, computed: share, seconds, right, difficulty, ...rest };
    });
    await db.insert(turnResults).values({ turnId, total: 50, waiting: 0, tasks });
  }
  await page.goto(`/assignments/${id}/statistics`);
  const proposal = page.getByRole('region', { name: 'Difficulty, refitted from answers' });
  await expect(proposal.getByRole('row')).toHaveCount(5);
  await expect(proposal.getByText('within chance').first()).toBeVisible();
  await expect(proposal.getByText('once nothing is taken from anybody any more')).toBeVisible();
  await expect(proposal.getByRole('button')).toHaveCount(0);
  await db
    .update(assignments)
    .set({ closesAt: new Date(Date.UTC(2026, 0, 8)) })
    .where(eq(assignments.id, id));
  await page.reload();
  await proposal.getByRole('button', { name: 'Accept these difficulties' }).click();
  await expect(proposal.getByText('Accepted.')).toBeVisible();
  const kept = await db.select().from(calibrations).where(eq(calibrations.organizationId, organizationId));
  expect(kept.map(({ item, answers, acceptedBy }) => [item, answers, acceptedBy])).toEqual(
    [1, 2, 3, 4].map((place) => [`${versionId} ${place}`, 40, instructor.id]),
  );
  // Linked over the four: their mean is that of the design.
  expect(kept.reduce((sum, { difficulty }) => sum + difficulty, 0)).toBeCloseTo(0, 6);
});
