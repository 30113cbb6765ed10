import { z } from 'zod';
import { idSchema } from '../source';

const share = z.number().min(0).max(1);

/** What comes of people whose true ability lies so far from the cut, on every topic. */
const rowSchema = z.strictObject({
  /** Logits above the cut. */
  above: z.number(),
  people: z.int().positive(),
  /** Of the topics decided on: shares that sum to 1. */
  ready: share,
  notYet: share,
  undecided: share,
  /** Share of people who are ready on every topic. */
  allReady: share,
  tasks: z.number().min(0),
  minutes: z.number().min(0),
});

/** How a scheme decides, by simulated learners who act in real cases and questions and are graded as anybody is. */
export const characteristicsSchema = z.strictObject({
  /** Of the scheme. */
  id: idSchema,
  cut: z.number(),
  confidence: share,
  refuse: share,
  rows: z.array(rowSchema).min(3),
  /** Over people as many as there are of each ability, N(0, 1). */
  population: z.strictObject({
    people: z.int().positive(),
    /** Share of the 90 % intervals that hold the true ability. */
    coverage: share,
    /** Of the means after a sitting with the true abilities. */
    correlation: z.number().min(-1).max(1),
    /** Of decisions that were made: share on the right side of the cut. */
    accuracy: share,
    /** Share of topics on which two sittings decide alike. */
    agreement: share,
  }),
  /** Share of works on a topic whose score was the level that was meant, by level 0…4. */
  asMeant: z.array(share).length(5),
  madeBy: z.strictObject({
    seed: z.string(),
    cases: z.int(),
    questionsPerTopic: z.int(),
    contentHash: z.string(),
    generatorVersion: z.int(),
    questionVersion: z.int(),
  }),
});

export type SchemeCharacteristics = z.infer<typeof characteristicsSchema>;
export type CharacteristicRow = z.infer<typeof rowSchema>;
