'use client';

import { useEffect, useRef } from 'react';

/** Enter presses the button of the form inside from wherever the keyboard stands, but for other buttons, links and fields. */
export function EnterHere({ children }: { children: React.ReactNode }) {
  const here = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || event.repeat || event.defaultPrevented) return;
      if (event.target instanceof Element && event.target.closest('a, button, input, select, textarea, summary'))
        return;
      here.current?.querySelector('form')?.requestSubmit();
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, []);
  return <div ref={here}>{children}</div>;
}
