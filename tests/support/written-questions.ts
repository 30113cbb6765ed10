import type { WrittenForm } from '@/lib/questions/written/written-forms';
import type { WrittenBody, WrittenQuestion } from '@/lib/questions/written/written-question';

type Bodies = { [Form in WrittenForm]: Extract<WrittenBody, { form: Form }> };

const picture = { id: 'abcdefabcdefabcdefab', width: 800, height: 600, alt: 'A fuel filter head with three fittings' };

const bodies: Bodies = {
  choice: {
    form: 'choice',
    shuffle: true,
    options: [
      { id: 'one', text: 'A dial gauge, 0–30 psi' },
      { id: 'two', text: 'A dial gauge, 0–300 psi', because: 'One division of it is as large as the whole limit.' },
      { id: 'three', text: 'A *vacuum* gauge' },
    ],
    right: 'one',
  },
  several: {
    form: 'several',
    shuffle: true,
    options: [
      { id: 'one', text: 'Chock the wheels' },
      { id: 'two', text: 'Vent the exhaust' },
      { id: 'three', text: 'Loosen the rail fitting', because: 'The rail is under pressure while the engine turns.' },
    ],
    right: ['one', 'two'],
  },
  numbers: {
    form: 'numbers',
    variables: [
      { name: 'before', from: 400, to: 500, step: 10 },
      { name: 'after', from: 300, to: 380, step: 5 },
    ],
    formula: 'before - after',
    unit: 'kPa',
    tolerance: { kind: 'absolute', amount: 2 },
    decimals: 0,
  },
  order: {
    form: 'order',
    items: [
      { id: 'first', text: 'Switch the engine off' },
      { id: 'second', text: 'Let the pressure fall' },
      { id: 'third', text: 'Open the fitting' },
    ],
  },
  point: { form: 'point', rig: 'tern-13', right: [{ what: 'element', of: 'gear-pump' }] },
  spot: {
    form: 'spot',
    picture,
    areas: [
      { id: 'left', name: 'The fitting on the left', left: 0.1, top: 0.2, right: 0.3, bottom: 0.5 },
      { id: 'middle', name: 'The fitting in the middle', left: 0.4, top: 0.2, right: 0.6, bottom: 0.5 },
    ],
    right: ['middle'],
  },
  words: { form: 'words', most: 600, model: 'Because **air** came in.', guidance: 'One mark for air.', steps: 3 },
};

/** A written question of a form, as a valid one may be. */
export function aWrittenQuestion<Form extends WrittenForm = 'choice'>(
  form: Form = 'choice' as Form,
  changes: Partial<Omit<WrittenQuestion, 'body'>> & { body?: Partial<Bodies[Form]> } = {},
): WrittenQuestion {
  const { body, ...rest } = changes;
  return {
    title: `About a ${form} (invented)`,
    stem: form === 'numbers' ? 'Before {before} kPa, after {after} kPa. How large is the drop?' : 'What **now**?',
    topics: ['filtration'],
    difficulty: 0.5,
    seconds: 60,
    explanation: form === 'numbers' ? '{before} − {after} = {answer} kPa.' : 'Because *so*.',
    ...rest,
    body: { ...bodies[form], ...body } as WrittenBody,
  };
}
