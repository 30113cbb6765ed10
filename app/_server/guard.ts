import { notFound, redirect } from 'next/navigation';
import { type ActionDoor, actionDoors, type RouteDoor, routeDoors } from './doors';
import { type Permit, permit, type SignedInPermit } from './permit';
import { problem } from './problems';
import { type IdNamed, resourceBehind } from './resource-behind';
import { readSession } from './session';

/**
 * The doors of the site. Every page, download, upload and action is made by one of these four, so that the first thing any of
 * them does is to ask `can`. Who is not let in is told the same whether the thing is somebody else's or not there.
 */

type Params = Record<string, string | string[] | undefined>;

/** The permit that a door gives: where anyone may come in, nobody need be signed in. */
type PermitBehind<D extends { action: string }> = D['action'] extends `site.${string}` | 'link.follow' | 'class.join'
  ? Permit
  : SignedInPermit;
type RoutePermit<D extends RouteDoor> = PermitBehind<(typeof routeDoors)[D]>;
type ActionPermit<D extends ActionDoor> = PermitBehind<(typeof actionDoors)[D]>;

/** A page behind a door. Whoever is not signed in is sent to sign in, and back afterwards. */
export function page<D extends RouteDoor, P extends { params: Promise<Params> }, R>(
  door: D,
  render: (permit: RoutePermit<D>, props: P) => Promise<R>,
): (props: P) => Promise<R> {
  return async (props) => {
    const params = await props.params;
    const given = await askAt(routeDoors[door], idIn(params));
    if (given) return render(given as RoutePermit<D>, props);
    const session = await readSession();
    if (!session) redirect(signInFor(addressOf(door, params)));
    // Let into no organisation, there is nothing but one's own account.
    if (!session.actor.organizationId) redirect('/me');
    notFound();
  };
}

/** Something that is sent as it is, such as a picture, to a door. */
export function upload<D extends RouteDoor, Q extends Params>(
  door: D,
  answer: (permit: RoutePermit<D>, request: Request, params: Q) => Promise<Response>,
): (request: Request, context: { params: Promise<Q> }) => Promise<Response> {
  return download(door, answer);
}

/** A download behind a door. */
export function download<D extends RouteDoor, Q extends Params>(
  door: D,
  answer: (permit: RoutePermit<D>, request: Request, params: Q) => Promise<Response>,
): (request: Request, context: { params: Promise<Q> }) => Promise<Response> {
  return async (request, { params }) => {
    const named = await params;
    const given = await askAt(routeDoors[door], idIn(named));
    if (given) return answer(given as RoutePermit<D>, request, named);
    return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
  };
}

/** What an action says to somebody whom the door does not let in. */
export interface Refused {
  error: string;
}

/** A form's action behind a door. */
export function action<D extends ActionDoor, R>(
  door: D,
  run: (permit: ActionPermit<D>, form: unknown) => Promise<R>,
): (form: unknown) => Promise<R | Refused> {
  return async (form) => {
    const given = await askAt(actionDoors[door], idIn(form));
    if (given) return run(given as ActionPermit<D>, form);
    return { error: await problem((await readSession()) ? 'not-there' : 'signed-out') };
  };
}

type Door = (typeof routeDoors)[RouteDoor] | (typeof actionDoors)[ActionDoor];

async function askAt({ action: wanted, behind }: Door, idNamed: IdNamed): Promise<Permit | undefined> {
  const session = await readSession();
  const resource = await resourceBehind(behind, session?.actor ?? null, idNamed);
  return resource && permit(session, wanted, resource);
}

/** Longest thing that is taken for an id. */
const LONGEST_ID = 80;

/** Ids out of a form, a plain object or a route's parameters. */
function idIn(source: unknown): IdNamed {
  return (name) => {
    const value = source instanceof FormData ? source.get(name) : (source as Params | null)?.[name];
    return typeof value === 'string' && value.length > 0 && value.length <= LONGEST_ID ? value : undefined;
  };
}

function addressOf(door: RouteDoor, params: Params): string {
  return door.replace(/\[(\w+)\]/g, (_, name: string) => encodeURIComponent(String(params[name] ?? '')));
}

function signInFor(next: string): string {
  return next === '/learn' ? '/sign-in' : `/sign-in?next=${encodeURIComponent(next)}`;
}
