import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SESSION_COOKIE } from './people';
import { root } from './server';

/** A server action as the build knows it. */
export interface ServerAction {
  /** Its address. */
  id: string;
  name: string;
  /** Routes of the pages that send it. */
  routes: string[];
}

/** Every server action of the build. */
export function serverActions(): ServerAction[] {
  const manifest = JSON.parse(readFileSync(join(root, '.next/server/server-reference-manifest.json'), 'utf8'));
  const entries = Object.entries<{ exportedName?: string; workers: Record<string, unknown> }>(manifest.node);
  return entries.map(([id, { exportedName, workers }]) => ({
    id,
    name: exportedName ?? '',
    routes: Object.keys(workers).flatMap((worker) => /^app(.*)\/page$/.exec(worker)?.[1] ?? []),
  }));
}

/** Who calls, and where. */
export interface Caller {
  origin: string;
  /** Value of the session's cookie; without one nobody is signed in. */
  cookie?: string | undefined;
  /** The site that the browser says it is on, where that is not where it was asked. */
  says?: string;
}

export interface ActionAnswer {
  status: number;
  /** What the action handed back, and the page after it, as the framework writes them. */
  text: string;
  /** Where it sends the browser; null when nowhere. */
  goesTo: string | null;
  /** Cookies that it sets, as they were written. */
  cookies: readonly string[];
}

/** Sends a form to a server action of a page, as the page's own script does. @throws when the build has no such action. */
export async function callAction(
  { origin, cookie, says = origin }: Caller,
  path: string,
  name: string,
  fields: Readonly<Record<string, string | readonly string[]>>,
): Promise<ActionAnswer> {
  const form = new FormData();
  // How a script hands a form to a server action: the form's fields numbered, then the list of arguments.
  for (const [field, values] of Object.entries(fields))
    for (const value of [values].flat()) form.append(`_1_${field}`, value);
  form.set('0', '["$K1"]');
  const answer = await fetch(origin + path, {
    method: 'POST',
    redirect: 'manual',
    headers: {
      'Next-Action': idOf(name),
      Accept: 'text/x-component',
      Origin: says,
      ...(cookie && { Cookie: `${SESSION_COOKIE}=${cookie}` }),
    },
    body: form,
  });
  return {
    status: answer.status,
    text: await answer.text(),
    goesTo: answer.headers.get('x-action-redirect'),
    cookies: answer.headers.getSetCookie(),
  };
}

const ids = new Map<string, string>();

function idOf(name: string): string {
  if (ids.size === 0) for (const action of serverActions()) ids.set(action.name, action.id);
  const id = ids.get(name);
  if (!id) throw new Error(`The build has no server action ${name}`);
  return id;
}
