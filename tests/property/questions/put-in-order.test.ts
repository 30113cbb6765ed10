import { describe, expect, it } from 'vitest';
import type { Line } from '@/lib/questions/line';
import { markAnswer } from '@/lib/questions/mark';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { aRig, catalogue } from '../../support/bench-rig';
import { expectSoundQuestions } from '../../support/sound-questions';

interface Procedure {
  id: string;
  steps: string[];
}

const procedures = catalogue.questions.get('put-in-order')?.ranges.procedures as Procedure[];

describe('put in order', () => {
  it('has one order that the graph or the procedure knows, over 5,000 seeds', () => {
    expectSoundQuestions('put-in-order', (question) => {
      const items = inRightOrder(question);
      const parts = items.flatMap((line) => partOf(line) ?? []);
      if (parts.length > 0) expectOnOneWay(parts, question.rig);
      else expectOneChain(items.map(sayOf));
      expect(new Set(items.map((line) => JSON.stringify(line))).size).toBe(items.length);
    });
  });

  it('gives no more than half the marks to whoever leaves everything as it lies', () => {
    expectSoundQuestions(
      'put-in-order',
      (question) => {
        const { answer } = question;
        const order = answer.form === 'order' ? answer.items.map(({ id }) => id) : [];
        expect(markAnswer(question, { form: 'order', order }).score).toBeLessThanOrEqual(2);
      },
      500,
    );
  });
});

function inRightOrder({ answer, key }: GeneratedQuestion): Line[] {
  if (answer.form !== 'order' || key.form !== 'order') throw new Error('Nothing to put in order');
  return key.order.flatMap((id) => answer.items.filter((item) => item.id === id).map(({ line }) => line));
}

function sayOf(line: Line): string {
  return 'say' in line ? line.say : '';
}

function partOf(line: Line): string | undefined {
  const part = 'say' in line ? line.with?.part : undefined;
  return typeof part === 'object' && 'name' in part ? part.id : undefined;
}

/** Reachable the one way and never the other: Warshall's closure of the graph, cut where the fuel is back in the tank. */
function expectOnOneWay(parts: readonly string[], rig: string): void {
  const reaches = closures.get(rig) ?? closureOf(rig);
  closures.set(rig, reaches);
  for (const [place, before] of parts.entries())
    for (const after of parts.slice(place + 1)) {
      expect(reaches.has(`${before} ${after}`), `${before} before ${after}`).toBe(true);
      expect(reaches.has(`${after} ${before}`), `${after} never before ${before}`).toBe(false);
    }
}

const closures = new Map<string, Set<string>>();

function closureOf(id: string): Set<string> {
  const { elements, nodes } = aRig(id);
  const ids = elements.map((element) => element.id);
  const reaches = new Set<string>();
  const side = (node: string) => nodes.find((one) => one.id === node)?.side ?? 'ambient';
  for (const one of elements)
    for (const two of elements) {
      if (one === two || /leak$/.test(one.kind) || /leak$/.test(two.kind)) continue;
      // A regulator on the low side sends fuel back to where the pump drew it: no way on.
      if ('from' in one && side(one.from) === 'low' && side(one.to) === 'suction') continue;
      const end = 'from' in one ? one.to : one.node;
      const start = 'from' in two ? two.from : two.node;
      // The return line ends in the tank, and a vessel hands on to what leaves it but not to what fills it.
      if (end === start && one.id !== 'return-line') reaches.add(`${one.id} ${two.id}`);
    }
  for (const via of ids)
    for (const from of ids)
      for (const to of ids)
        if (reaches.has(`${from} ${via}`) && reaches.has(`${via} ${to}`)) reaches.add(`${from} ${to}`);
  return reaches;
}

function expectOneChain(says: readonly string[]): void {
  const chain = procedures.find(({ id }) => says.every((say) => say.startsWith(`step-${id}-`)));
  if (!chain) throw new Error(`No procedure has ${says}`);
  const places = says.map((say) => chain.steps.indexOf(say.slice(`step-${chain.id}-`.length)));
  expect(places).not.toContain(-1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
}
