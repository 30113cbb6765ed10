import { z } from 'zod';
import type { RandomStream } from '../../../random';
import { idSchema } from '../../../source';
import { howMany, type Ordered, some } from './ordered';

/** Steps of a piece of work that cannot change places: each two of them have an order that anybody would defend. */
export const procedureSchema = z.strictObject({
  id: idSchema,
  topics: z.array(idSchema).min(1),
  cautions: z.array(idSchema).min(1),
  steps: z.array(idSchema).min(5),
});

export type Procedure = z.infer<typeof procedureSchema>;

/** Some of a procedure's steps, each with why it stands where it stands. */
export function stepsInOrder(
  { id, topics, cautions, steps }: Procedure,
  count: { least: number; most: number },
  stream: (name: string) => RandomStream,
): Ordered {
  const size = Math.min(howMany(stream('count'), count), steps.length);
  const drawn = some(stream('steps'), steps, size);
  return {
    stem: [{ say: `order-${id}` }, { say: 'maker-first' }],
    items: drawn.map((step) => ({ say: `step-${id}-${step}` })),
    explanation: [
      ...drawn.map((step, at) => ({
        say: 'why-step',
        with: {
          place: at + 1,
          step: { line: { say: `step-${id}-${step}` } },
          why: { line: { say: `why-${id}-${step}` } },
        },
      })),
      { say: 'practice' },
    ],
    topics,
    cautionsAfter: cautions,
    features: { items: drawn.length - count.least, procedure: 1 },
  };
}
