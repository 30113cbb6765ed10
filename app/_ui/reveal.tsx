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
    element?.closest('section')?.scrollIntoView({ block: window.innerWidth < 900 ? 'start' : 'nearest' });
  }, [target, when]);
  return null;
}
