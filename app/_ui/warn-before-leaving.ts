import { useEffect } from 'react';

/** Asks before a page is left on which something is not kept yet. */
export function useWarning(isOn: boolean): void {
  useEffect(() => {
    if (!isOn) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [isOn]);
}
