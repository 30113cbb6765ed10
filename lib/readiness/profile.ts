import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

const profileShape = z.strictObject({
  id: idSchema,
  /** From 1; a decision names the version that it was made under. */
  version: z.int().positive(),
  /** Every one of them must be shown: no strength elsewhere makes up for a weak one. */
  topics: z
    .array(
      z.strictObject({
        topic: idSchema,
        /** Ability that counts as enough, logits. */
        cut: z.number().min(-4).max(4),
        /** Chance of being at the cut or above that is asked for. */
        confidence: z.number().min(0.5).max(0.999),
      }),
    )
    .min(1),
  /** A chance of being at the cut or above that is at most so large means not yet. */
  refuse: z.number().min(0.001).max(0.5),
  /** Responses a topic that a decision rests on at least. */
  minimum: z.int().min(1),
  /** Responses a topic after which a new-hire check gives up. */
  maximum: z.int().min(1),
  /** No safety-critical act in the last so many cases, of at least so many. */
  safety: z.strictObject({ clean: z.int().min(0), atLeast: z.int().min(0) }),
  /** The newest response on each topic is at most so old. */
  recentDays: z.int().positive(),
  /** How long a sign-off stands. */
  validMonths: z.int().positive(),
  /** Of a new-hire check, without extra time. */
  minutes: z.int().min(10).max(240),
  /** What somebody must have been seen doing with their hands before a sign-off; null where nothing is asked. */
  handsOn: z
    .array(
      z.strictObject({
        id: idSchema,
        topic: idSchema,
        /** 0…outOf. */
        outOf: z.int().min(1).max(4),
        /** Points that it takes at least. */
        pass: z.int().min(0).max(4),
        text: z.strictObject({ en: z.string().min(1) }),
      }),
    )
    .nullable(),
  text: z.strictObject({ en: z.strictObject({ name: z.string().min(1), about: z.string().min(1) }) }),
  source: sourceSchema,
});

/** What somebody in a role may be trusted with, and what they must have shown for it. Content, or an organisation's own. */
export const roleProfileSchema = profileShape.superRefine(({ topics, handsOn, ...rest }, { addIssue }) => {
  const wrong = (path: (string | number)[], message: string) => addIssue({ code: 'custom', path, message });
  topics.forEach(({ topic, confidence }, index) => {
    if (topics.findIndex((one) => one.topic === topic) < index) wrong(['topics', index, 'topic'], 'named twice');
    if (confidence <= rest.refuse) wrong(['topics', index, 'confidence'], 'not above refuse');
  });
  handsOn?.forEach(({ id, pass, outOf }, index) => {
    if (handsOn.findIndex((one) => one.id === id) < index) wrong(['handsOn', index, 'id'], 'named twice');
    if (pass > outOf) wrong(['handsOn', index, 'pass'], 'more than outOf');
  });
  if (rest.maximum < rest.minimum) wrong(['maximum'], 'less than minimum');
  if (rest.safety.atLeast > rest.safety.clean) wrong(['safety', 'atLeast'], 'more than clean');
});

export type RoleProfile = z.infer<typeof roleProfileSchema>;
export type RequiredTopic = RoleProfile['topics'][number];
