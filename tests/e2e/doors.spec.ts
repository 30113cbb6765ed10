import type { ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { actionDoors, type RouteDoor, routeDoors } from '@/app/_server/doors';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { listSessions } from '@/db/queries/sessions';
import type { Actor } from '@/lib/accounts/actor';
import { can } from '@/lib/accounts/can';
import { parseRoles } from '@/lib/accounts/roles';
import { callAction, serverActions } from '../support/call-action';
import { codeOf } from '../support/case-codes';
import { college, harbour, newSession, type PersonKey, people, SESSION_COOKIE } from '../support/people';
import { freshData, openPlace, placeFor, root, startServer, untilUp } from '../support/server';
import { DOORS_PORT, type Target, targetsBehind } from './doors/targets';

/**
 * Walks every page, download and action of the build as everybody, to one's own things, another person's, another
 * organisation's and to nothing, and compares who is let in with lib/accounts/permissions.ts. The site may do what it
 * likes here: its people and things are made for this walk alone.
 */
const place = placeFor(DOORS_PORT);
const origin = `http://127.0.0.1:${place.port}`;
let server: ChildProcess;
let db: Db;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async () => {
  await freshData(place);
  db = openPlace(place);
  server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  await untilUp(place);
  const keeper = { origin, cookie: await cookieOf('keeper') };
  await callAction(keeper, '/upkeep', 'backUpNow', {});
  FILLED.file = readdirSync(join(place.data, 'back-ups'))[0] ?? 'none';
});

test.afterAll(() => {
  server.kill('SIGTERM');
});

test('every page and download of the build has a door, and every door a page or download', () => {
  expect(routesOf('app').sort()).toEqual(Object.keys(routeDoors).sort());
});

test('every server action of the build has a door, and every door an action', () => {
  const names = serverActions().map(({ name }) => name);
  expect(names.sort()).toEqual(Object.keys(actionDoors).sort());
});

test('every page and download is made by its own door', () => {
  for (const file of filesOf('app', /(^|\/)(page\.tsx|route\.ts)$/)) {
    const source = readFileSync(join(root, file), 'utf8');
    const made = file.endsWith('page.tsx')
      ? /export default page\(\s*'([^']+)'/
      : /(?:export )?const \w+ = (?:download|upload)\(\s*'([^']+)'/;
    expect(made.exec(source)?.[1], file).toBe(routeOf(file));
    const exported = [...source.matchAll(/^export (?:default|async function|function|const) ?(\w*)/gm)].map(
      ([, name]) => name,
    );
    expect(
      exported.filter((name) => !['', 'page', 'GET', 'POST', 'generateMetadata', 'dynamic'].includes(name ?? '')),
      file,
    ).toEqual([]);
  }
});

for (const who of ['visitor', ...Object.keys(people)] as (PersonKey | 'visitor')[]) {
  test(`${who} is let in to the pages and downloads that the table says, and to no other`, async () => {
    const actor = actorOf(who);
    const cookie = await cookieOf(who);
    const wrong: string[] = [];
    for (const [route, { action, behind }] of Object.entries(routeDoors) as [
      RouteDoor,
      (typeof routeDoors)[RouteDoor],
    ][])
      for (const target of await targetsBehind(db, behind, actor)) {
        const expected = mayCome(actor, action, target);
        const answer = await visit(cookie, addressOf(route, target.ids));
        if (answer.letIn !== expected) wrong.push(`${route} (${target.name}): ${answer.told}, table says ${expected}`);
      }
    expect(wrong).toEqual([]);
  });

  test(`${who} is let in to the actions that the table says, and to no other`, async () => {
    test.slow();
    const actor = actorOf(who);
    const wrong: string[] = [];
    const names = new Map(serverActions().map(({ name, routes }) => [name, routes]));
    for (const [name, { action, behind }] of Object.entries(actionDoors))
      for (const target of await targetsBehind(db, behind, actor)) {
        const expected = mayCome(actor, action, target);
        const [route = '/'] = names.get(name) ?? [];
        const caller = { origin, cookie: await cookieOf(who) };
        const fields = { ...(await FIELDS[name]?.(who)), ...target.ids };
        const { status, text } = await callAction(caller, addressOf(route, target.ids), name, fields);
        const refused = [messages.problems['not-there'], messages.problems['signed-out']].some((words) =>
          text.includes(words),
        );
        const wrongly = expected ? refused && !REFUSES_ITSELF.has(name) : !refused;
        if (status >= 500 || wrongly)
          wrong.push(`${name} (${target.name}): ${status} ${text.slice(0, 200)}, table says ${expected}`);
      }
    expect(wrong).toEqual([]);
  });
}

/** What an action is told besides the door's id, where without it the answer would be that of a closed door. */
const FIELDS: Readonly<Record<string, (who: PersonKey | 'visitor') => Promise<Record<string, string>>>> = {
  signOutSession: async (who) => ({ sessionId: who === 'visitor' ? 'none' : await sessionOf(people[who].id) }),
  askErasure: async (who) => ({
    wish: 'ask',
    organizationId: who === 'stranger' || who === 'otherAdministrator' ? college.id : harbour.id,
  }),
  mergePeople: async (who) => ({ doubleId: await somebodyElse(actorOf(who)?.organizationId ?? harbour.id) }),
};

/** An attempt that is open has nothing that another could be like: as if it were not there (debrief.spec.ts). */
const REFUSES_ITSELF: ReadonlySet<string> = new Set(['startAlike']);

async function sessionOf(userId: string): Promise<string> {
  await newSession(db, userId);
  const [newest] = await listSessions(db, userId, new Date(), 1);
  return newest?.id ?? 'none';
}

/** Somebody of an organisation whom nobody minds losing. */
async function somebodyElse(organizationId: string): Promise<string> {
  const targets = await targetsBehind(db, 'member', null);
  return targets.find(({ name }) => name.endsWith(organizationId))?.ids.personId ?? 'none';
}

function mayCome(
  actor: Actor | null,
  action: (typeof routeDoors)[RouteDoor]['action'] | (typeof actionDoors)[keyof typeof actionDoors]['action'],
  target: Target,
): boolean {
  const resource = target.resource(actor);
  return resource !== undefined && can(actor, action, resource);
}

function actorOf(who: PersonKey | 'visitor'): Actor | null {
  if (who === 'visitor') return null;
  const person: { id: string; roles: Readonly<Record<string, string>>; keeper?: boolean; deactivated?: boolean } =
    people[who];
  const organizationIds = person.deactivated ? [] : Object.keys(person.roles);
  // Of several, the first by name is entered.
  const organizationId = [...organizationIds].sort((a, b) => a.localeCompare(b))[0] ?? null;
  return {
    personId: person.id,
    organizationId,
    organizationIds,
    roles: organizationId ? parseRoles(person.roles[organizationId] ?? '') : [],
    keeper: person.keeper ?? false,
  };
}

async function cookieOf(who: PersonKey | 'visitor'): Promise<string | undefined> {
  return who === 'visitor' ? undefined : newSession(db, people[who].id);
}

/** Where a page that lets one in is not there for another reason, or leads on. */
const OTHERWISE: Readonly<Record<string, RegExp>> = {
  // The installation has people.
  '/set-up': /^404$/,
  // Whoever is signed in already is led on.
  '/sign-in': /^(200|307 \/learn)$/,
  // Whoever may send a picture is told that this is none.
  '/questions/pictures': /^400$/,
  // … or a file of questions, that there is no topic.
  '/questions/exchange/preview': /^400$/,
  '/questions/exchange/import': /^400$/,
  // Whose turns are looked at stands in the query; without one there is the whole book.
  '/gradebook/turns': /^307 \/gradebook$/,
  // No organisation of that id issues anything.
  '/issuers/none': /^404$/,
  '/issuers/none/keys': /^404$/,
  '/issuers/none/keys/none': /^404$/,
  '/issuers/none/status/none': /^404$/,
  // An attempt that is open has no debrief yet.
  '/learn/cases/debrief': /^307 \/learn\/cases\/\w+$/,
};

/** Addresses that something is sent to. */
const SENT_TO: ReadonlySet<string> = new Set([
  '/questions/pictures',
  '/questions/exchange/preview',
  '/questions/exchange/import',
]);

async function visit(cookie: string | undefined, path: string): Promise<{ letIn: boolean; told: string }> {
  const answer = await fetch(origin + path, {
    redirect: 'manual',
    ...(SENT_TO.has(path) && { method: 'POST', body: 'no picture' }),
    headers: { Origin: origin, ...(cookie && { Cookie: `${SESSION_COOKIE}=${cookie}` }) },
  });
  await answer.text();
  const goesTo = answer.headers.get('location');
  const told = goesTo ? `${answer.status} ${goesTo}` : String(answer.status);
  const known = path.replace(/\/cases\/\w+/, '/cases');
  const led = OTHERWISE[known];
  return { letIn: led ? led.test(told) : answer.status === 200, told };
}

/** What fills places in an address that no id of a target does. */
const FILLED: Record<string, string> = {
  token: 'no-such-token',
  schemeId: 'low-pressure-diagnosis',
  format: 'json',
  code: codeOf('lift-pump-weak', 800),
  attemptId: 'none',
  personId: 'none',
  classId: 'none',
  assignmentId: 'none',
  questionId: 'none',
  pictureId: 'none',
  profileId: 'low-pressure-unsupervised',
};

function addressOf(route: string, ids: Readonly<Record<string, string>>): string {
  return route.replace(/\[(\w+)\]/g, (_, name: string) => ids[name] ?? FILLED[name] ?? 'none') || '/';
}

function routesOf(folder: string): string[] {
  return filesOf(folder, /(^|\/)(page\.tsx|route\.ts)$/).map(routeOf);
}

function routeOf(file: string): string {
  return file.replace(/^app/, '').replace(/\/(page\.tsx|route\.ts)$/, '') || '/';
}

function filesOf(folder: string, pattern: RegExp): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => `${folder}/${file}`)
    .filter((file) => pattern.test(file));
}
