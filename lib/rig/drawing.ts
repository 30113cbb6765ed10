import { z } from 'zod';
import { idSchema, portIdSchema } from '../source';
import type { Rig } from './rig';

/**
 * Where a rig's parts stand on its line drawing. The drawing itself is made from the rig's graph: symbols from the
 * elements' kinds, lines from who is connected to whom, line styles from the nodes' sides.
 */
const pointSchema = z.tuple([z.number(), z.number()]);

export type Point = z.infer<typeof pointSchema>;

const labelSchema = z.strictObject({
  at: pointSchema,
  anchor: z.enum(['start', 'middle', 'end']).default('middle'),
  /** Broken into lines where the name is long. */
  lines: z.array(z.string()).min(1).optional(),
});

const placeSchema = z.union([
  z.strictObject({
    at: pointSchema,
    /** Degrees clockwise from "flow runs to the right". */
    turn: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]).default(0),
    label: labelSchema.optional(),
    /** Where the symbol of the element's kind would not show what the part is. */
    symbol: z.enum(['screen']).optional(),
  }),
  /** Part of another element's symbol, such as the leakage past a pump's plungers. */
  z.strictObject({ within: idSchema }),
  /** A line from node to node without a symbol. */
  z.strictObject({ via: z.array(pointSchema) }),
]);

export type Place = z.infer<typeof placeSchema>;

export const drawingSchema = z.strictObject({
  /** Id of the rig. */
  id: idSchema,
  width: z.number().positive(),
  height: z.number().positive(),
  elements: z.record(idSchema, placeSchema),
  /** The line that stands for a node; ends of elements are led to its nearest point. */
  nodes: z.record(idSchema, z.array(pointSchema).min(1)),
  ports: z.record(portIdSchema, z.strictObject({ at: pointSchema, tap: pointSchema })),
});

export type Drawing = z.infer<typeof drawingSchema>;

/** What a drawing lacks or has too much of, compared with its rig. */
export function drawingGaps(drawing: Drawing, rig: Rig): string[] {
  const drawn = rig.nodes.filter(({ side }) => side !== 'ambient').map(({ id }) => id);
  return [
    ...differences(
      'element',
      rig.elements.map(({ id }) => id),
      Object.keys(drawing.elements),
    ),
    ...differences('node', drawn, Object.keys(drawing.nodes)),
    ...differences(
      'port',
      rig.ports.map(({ id }) => id),
      Object.keys(drawing.ports),
    ),
  ];
}

function differences(what: string, expected: readonly string[], found: readonly string[]): string[] {
  return [
    ...expected.filter((id) => !found.includes(id)).map((id) => `${what} ${id} is not drawn`),
    ...found.filter((id) => !expected.includes(id)).map((id) => `${what} ${id} is drawn but not in the rig`),
  ];
}
