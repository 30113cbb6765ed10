import { z } from 'zod';
import { decisions } from '@/lib/competency/decision';
import { type BoardView, soonChoices, usualBoardView } from '@/lib/readiness/board-view';

const viewSchema = z.object({
  name: z.string().max(80).catch(usualBoardView.name),
  classId: z.string().max(80).catch(usualBoardView.classId),
  decision: z.enum(decisions).or(z.literal('')).catch(usualBoardView.decision),
  soon: z.enum(soonChoices).or(z.literal('')).catch(usualBoardView.soon),
  sort: z.string().max(80).catch(usualBoardView.sort),
  down: z.stringbool().catch(usualBoardView.down),
});

/** A view out of an address; what cannot be read gives way to the usual. */
export function parseBoardView(query: Readonly<Record<string, unknown>>): BoardView {
  return viewSchema.parse(query);
}

/** What of an address names a profile and a view of its board. */
export function boardQuery(profileId: string, view: BoardView): string {
  const said = Object.entries(view).filter(([key, value]) => value !== usualBoardView[key as keyof BoardView]);
  return `?${new URLSearchParams([['profile', profileId], ...said.map(([key, value]) => [key, String(value)])])}`;
}
