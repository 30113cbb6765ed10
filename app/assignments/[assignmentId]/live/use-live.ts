'use client';

import { useEffect, useState } from 'react';
import type { LiveView } from '@/app/_server/assignments/live-view';

/** How often the numbers are asked for. */
const EVERY_MS = 5000;
/** How long an answer may take. */
const PATIENCE_MS = 10_000;

/** `here`: the last numbers came; `lost`: none come, and it is tried again; `ended`: one may not see them any more. */
export type Connection = 'here' | 'lost' | 'ended';

/** The newest numbers there are, asked for again and again, also after the connection was away. */
export function useLive(address: string, first: LiveView): { view: LiveView; connection: Connection } {
  const [view, setView] = useState(first);
  const [connection, setConnection] = useState<Connection>('here');

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    let stopped = false;
    let asking = false;

    async function ask() {
      if (asking || stopped) return;
      asking = true;
      clearTimeout(timer);
      const told = await newest(address);
      asking = false;
      if (stopped) return;
      if (typeof told === 'object') setView(told);
      setConnection(typeof told === 'object' ? 'here' : told);
      timer = setTimeout(ask, EVERY_MS);
    }

    timer = setTimeout(ask, EVERY_MS);
    // A tablet that wakes up, or finds the network again, does not wait.
    window.addEventListener('online', ask);
    document.addEventListener('visibilitychange', ask);
    return () => {
      stopped = true;
      clearTimeout(timer);
      window.removeEventListener('online', ask);
      document.removeEventListener('visibilitychange', ask);
    };
  }, [address]);

  return { view, connection };
}

async function newest(address: string): Promise<LiveView | 'lost' | 'ended'> {
  try {
    const answer = await fetch(address, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.status === 404) return 'ended';
    return answer.ok ? ((await answer.json()) as LiveView) : 'lost';
  } catch {
    return 'lost';
  }
}
