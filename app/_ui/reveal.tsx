'use client';

import { useEffect, useRef } from 'react';

/**
 * Brings the part of the page that just changed into view and puts the keyboard there.
 *
 * @param when  Changes with what is shown there; the first value, of a page just opened, moves nothing.
 */
export function Reveal({ target, when }: { target: string; when: string }) {
  const seen = useRef(when);
  useEffect(() => {
    if (seen.current === when) return;
    seen.current = when;
    const element = document.getElementById(target);
    element?.focus({ preventScroll: true });
    // A small screen has room for little more than the part itself; on a large one its whole panel may already be in view.
    if (window.innerWidth < 900) element?.scrollIntoView({ block: 'start' });
    else element?.closest('section')?.scrollIntoView({ block: 'nearest' });
  }, [target, when]);
  return null;
}
