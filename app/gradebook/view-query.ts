import { usualView, type View } from '@/lib/gradebook/book';

/** What of an address says a view; empty for the usual one. */
export function viewQuery(view: View): string {
  const said = Object.entries(view).filter(([key, value]) => value !== usualView[key as keyof View]);
  const query = new URLSearchParams(said.map(([key, value]) => [key, String(value)])).toString();
  return query && `?${query}`;
}
