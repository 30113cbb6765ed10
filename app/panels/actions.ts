'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { judgesIn } from '@/app/_server/panels/judge-of';
import { possibleJudges } from '@/app/_server/panels/possible-judges';
import { organizationOf } from '@/app/_server/permit';
import { poolVersions } from '@/app/_server/pool/make-task';
import { problem } from '@/app/_server/problems';
import { findScheme } from '@/app/_server/schemes';
import { keepScheme } from '@/app/_server/schemes/keep-scheme';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingPanel, adoptingCut, findPanel, listRatings, movingPanelOn, rating } from '@/db/queries/panels';
import { listPool } from '@/db/queries/pool-tasks';
import { claimThen } from '@/db/together';
import { FEWEST_JUDGES, finishedJudges, panelResult } from '@/lib/readiness/panel-result';
import { panelTasks } from '@/lib/readiness/panel-tasks';

const made = z.object({
  key: z.string().regex(/^[0-9a-f-]{16,64}$/i),
  title: z.string().trim().min(1).max(120),
  schemeId: z.string().min(1).max(80),
  tasks: z.coerce.number().int().min(5).max(60),
});
const rated = z.object({
  panelId: z.string(),
  task: z.coerce.number().int().min(1).max(60),
  expected: z.string().regex(/^\d{1,3}([.,]\d{1,2})?$/),
});

/** Puts a panel together: tasks for practice, so that no assessed one is shown to anybody, and judges from the staff. */
export const makePanel = action('makePanel', async (permit, form): Promise<ActResult> => {
  const parsed = made.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('panel-incomplete') };
  const { key, title, schemeId, tasks: count } = parsed.data;
  const organizationId = organizationOf(permit);
  const scheme = await findScheme(database(), organizationId, schemeId);
  if (!scheme) return { error: await problem('panel-incomplete') };
  const possible = await possibleJudges(organizationId);
  const asked = new Set((form as FormData).getAll('judges'));
  const judges = possible.filter(({ id }) => asked.has(id)).map(({ id }) => id);
  if (judges.length < FEWEST_JUDGES) return { error: await problem('panel-judges') };
  const tasks = panelTasks(scheme, await listPool(database(), 'practice', poolVersions()), count);
  if (tasks.length < 5) return { error: await problem('panel-no-tasks') };
  const id = idFromKey(permit, key);
  const row = {
    ...{ id, organizationId, schemeId, title, tasks, state: 'first-round' as const },
    ...{ createdBy: permit.session.actor.personId, createdAt: new Date() },
  };
  const { claim, others } = addingPanel(database(), row, judges);
  const entry = entryBy(permit, 'panel-made', { details: { panel: id, judges: judges.length, tasks: tasks.length } });
  await claimThen(database(), claim, [...others, addingLogEntry(database(), entry)]);
  redirect(`/panels/${id}`);
});

/** Puts down what a judge expects of somebody just good enough, in the round that goes on. */
export const rateTask = action('rateTask', async (permit, form): Promise<ActResult> => {
  const parsed = rated.safeParse(fieldsOf(form));
  const panel = await panelIn(organizationOf(permit), form);
  if (!panel) return { error: await problem('not-there') };
  if (!(await judgesIn(permit, panel))) return { error: await problem('panel-not-judge') };
  const task = parsed.success ? panel.tasks[parsed.data.task - 1] : undefined;
  if (!parsed.success || !task) return { error: await problem('panel-rating') };
  const typed = Number(parsed.data.expected.replace(',', '.'));
  const expected = task.model.kind === 'choice' ? typed / 100 : typed;
  if (!(expected >= 0 && expected <= task.outOf)) return { error: await problem('panel-rating') };
  const { personId: judgeId } = permit.session.actor;
  const round = panel.state === 'second-round' ? 2 : 1;
  const finished = finishedJudges(await listRatings(database(), panel.id), 1, panel.tasks.length);
  if (round === 2 && !finished.includes(judgeId)) return { error: await problem('panel-first') };
  const said = { panelId: panel.id, judgeId, round, task: parsed.data.task, expected, ratedAt: new Date() };
  const stored = await claimThen(database(), rating(database(), said), []);
  if (!stored) return { error: await problem('panel-moved') };
  revalidatePath(`/panels/${panel.id}`);
  return { done: true };
});

/** Opens the second round, or closes the panel, once enough judges have rated everything. */
export const movePanelOn = action('movePanelOn', async (permit, form): Promise<ActResult> => {
  const panel = await panelIn(organizationOf(permit), form);
  if (!panel) return { error: await problem('not-there') };
  if (fieldsOf(form).from !== panel.state || panel.state === 'closed') return { error: await problem('panel-moved') };
  const round = panel.state === 'first-round' ? 1 : 2;
  const finished = finishedJudges(await listRatings(database(), panel.id), round, panel.tasks.length);
  if (finished.length < FEWEST_JUDGES) return { error: await problem('panel-too-few') };
  const to = round === 1 ? 'second-round' : 'closed';
  const entry = entryBy(permit, 'panel-moved-on', { details: { panel: panel.id, to } });
  const moving = movingPanelOn(database(), { id: panel.id, from: panel.state, to, at: new Date() });
  const moved = await claimThen(database(), moving, [addingLogEntry(database(), entry)]);
  revalidatePath(`/panels/${panel.id}`);
  return moved ? { done: true } : { error: await problem('panel-moved') };
});

/** Takes the line of a closed panel over into the next version of its scheme. */
export const adoptCut = action('adoptCut', async (permit, form): Promise<ActResult> => {
  const organizationId = organizationOf(permit);
  const panel = await panelIn(organizationId, form);
  const scheme = panel && (await findScheme(database(), organizationId, panel.schemeId));
  const note = z.string().trim().min(1).max(1000).safeParse(fieldsOf(form).note);
  if (!panel || !scheme) return { error: await problem('not-there') };
  if (!note.success) return { error: await problem('panel-note') };
  const result = panelResult(panel.tasks, await listRatings(database(), panel.id));
  if (panel.state !== 'closed' || panel.adoptedVersion !== null || !result || 'why' in result.cut)
    return { error: await problem('panel-moved') };
  const at = (panel.closedAt ?? new Date()).getTime();
  const setBy = { kind: 'panel', panelId: panel.id, judges: result.judges, at } as const;
  const next = { ...scheme, version: scheme.version + 1, cut: { ...result.cut, setBy } };
  const entry = entryBy(permit, 'cut-adopted', { details: { panel: panel.id, version: next.version } });
  const kept = await keepScheme(permit, { scheme: next, note: note.data }, [
    adoptingCut(database(), { id: panel.id, version: next.version }),
    addingLogEntry(database(), entry),
  ]);
  if (!kept) return { error: await problem('scheme-moved') };
  redirect(`/schemes/${scheme.id}`);
});

async function panelIn(organizationId: string, form: unknown) {
  const { panelId } = fieldsOf(form);
  return typeof panelId === 'string' ? findPanel(database(), organizationId, panelId) : undefined;
}

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
