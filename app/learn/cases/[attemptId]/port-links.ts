import type { CaseFace } from '@/app/_server/attempt-view';
import type { PortLink } from '@/app/_ui/drawing/drawing-panel';
import type { Selection } from './selection';

/** Where each port of the drawing leads: to its only check, or to the list of its checks. */
export function portLinks(attemptId: string, { rig, choices }: CaseFace, { port, check }: Selection): PortLink[] {
  return rig.ports.map(({ id, text }) => {
    const [only, ...others] = choices.checks.filter(({ ports }) => ports.includes(id));
    const query = new URLSearchParams({ port: id, ...(only && others.length === 0 && { check: only.id }) });
    return {
      id,
      name: text.en,
      href: `/learn/cases/${attemptId}?${query}`,
      chosen: check ? check.ports.includes(id) : port === id,
    };
  });
}
