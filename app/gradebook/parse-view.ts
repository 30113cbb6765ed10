import { z } from 'zod';
import { cellStates, usualView, type View } from '@/lib/gradebook/book';

const viewSchema = z.object({
  name: z.string().max(80).catch(usualView.name),
  classId: z.string().max(80).catch(usualView.classId),
  state: z.enum(cellStates).or(z.literal('')).catch(usualView.state),
  sort: z.string().max(80).catch(usualView.sort),
  down: z.stringbool().catch(usualView.down),
});

/** A view out of an address; what cannot be read gives way to the usual. */
export function parseView(query: Readonly<Record<string, unknown>>): View {
  return viewSchema.parse(query);
}
