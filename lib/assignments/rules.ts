import { z } from 'zod';
import { partsSchema } from '../grading/rubric';

/** A time on the wall of the class's place, to the minute, without its zone: 2026-03-02T08:00. */
const localTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/);

/** What an assignment asks of those whom it is given to. */
export const rulesSchema = z.strictObject({
  opens: localTime,
  closes: localTime,
  /** IANA name of the zone in which both are meant. */
  timeZone: z.string().min(1).max(64),
  /** How often somebody may begin; the best total counts. */
  turns: z.int().min(1).max(10),
  /** `same`: everybody gets the same cases; `parallel`: each their own, alike in topic and difficulty. */
  seeds: z.enum(['same', 'parallel']),
  /** `practice`: hints, and everything is told at once; `assessed`: no hints, nothing told before it closes. */
  mode: z.enum(['practice', 'assessed']),
  /** From when a turn is begun until it is handed in, by the server's clock; null without a limit. */
  minutes: z.int().min(5).max(600).nullable(),
  /**
   * What becomes of a turn handed in after it closed. `refused`: it is handed in as it stands when it closes; otherwise it is
   * taken until `hours` later and loses `cost` of each hundred points.
   */
  late: z.union([
    z.literal('refused'),
    z.strictObject({ hours: z.int().min(1).max(720), cost: z.number().min(0).max(100) }),
  ]),
  /** Points of a hundred that each part of a case weighs; null for those of the rubric. */
  weights: partsSchema.nullable(),
  /** Whoever marks sees no names. */
  anonymous: z.boolean(),
  /** Free text is marked by a second person too. */
  secondMarker: z.boolean(),
});
export type AssignmentRules = z.infer<typeof rulesSchema>;
