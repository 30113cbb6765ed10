import { useSyncExternalStore } from 'react';

const never = () => () => undefined;

/** False in what the server sends, true once the page can act on what one does. */
export function useHydrated(): boolean {
  return useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
}
