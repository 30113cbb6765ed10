import { z } from 'zod';
import { areas } from '../areas';
import type { Catalogue } from '../catalogue';
import { idSchema } from '../source';

/** What every case shows of a topic, whatever is wrong in it. */
export const everyCaseParts = ['route', 'reasons', 'proof', 'practice', 'instruments'] as const;
export type EveryCasePart = (typeof everyCaseParts)[number];

/** How a number or a title of a standard is known: read at a public place, or from memory and to be looked up before it is relied on. */
export const waysOfKnowing = ['seen', 'memory'] as const;

/** A public occupational standard that asks for what a topic is about. */
const correspondenceSchema = z.strictObject({
  framework: z.string().min(1),
  code: z.string().min(1),
  title: z.string().min(1),
  howKnown: z.enum(waysOfKnowing),
});
export type Correspondence = z.infer<typeof correspondenceSchema>;

/** A part of the trade in which competence is measured. */
export const topicSchema = z
  .strictObject({
    id: idSchema,
    /** Names the topic in exchanges with others; never changes. */
    uuid: z.uuidv4(),
    /** From 1, in the order of the trade's work. */
    place: z.int().positive(),
    /** Areas whose causes are found by it. A topic without any is practised in every case. */
    areas: z.array(z.enum(areas)),
    checks: z.array(idSchema),
    /** What of every case belongs to it, in the place of areas and checks (`lib/competency/evidence-of-case.ts`). */
    everyCase: z.array(z.enum(everyCaseParts)),
    /** In our own words where the standard's were not to be read. */
    correspondsTo: z.array(correspondenceSchema).min(1),
    text: z.strictObject({ en: z.strictObject({ name: z.string().min(1), about: z.string().min(1) }) }),
  })
  .refine(
    ({ everyCase, areas }) => everyCase.length === 0 || areas.length === 0,
    'what belongs to every case covers no areas',
  );

export type Topic = z.infer<typeof topicSchema>;

export function topicsInOrder({ topics }: Pick<Catalogue, 'topics'>): Topic[] {
  return [...topics.values()].sort((a, b) => a.place - b.place);
}
