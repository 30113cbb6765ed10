import type { ChildProcess } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { hashPassword } from 'better-auth/crypto';
import { eq } from 'drizzle-orm';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { addingMember, changingRole, listMemberships } from '@/db/queries/members';
import { addingCredential, addingUser, findUserByAddress } from '@/db/queries/users';
import { classes, invitations, logEntries, members, refusedTries, users, verifications } from '@/db/schema';
import { together } from '@/db/together';
import { FREE_TRIES } from '@/lib/accounts/waiting-time';
import { type ActionAnswer, callAction } from '../support/call-action';
import { college, harbour, newSession, PASSWORD, people, SESSION_COOKIE, signedCookie } from '../support/people';
import { freshData, openPlace, placeFor, startServer, untilUp } from '../support/server';
import { expect, test } from './fixtures';
import { signInAs } from './sign-in';

/** A server of its own: what is tried here slows down whoever comes from the same address. */
const place = placeFor(3136);
const origin = `http://127.0.0.1:${place.port}`;
const { problems } = messages;
let db: Db;
let server: ChildProcess;

test.describe.configure({ mode: 'serial' });
test.use({ baseURL: origin, as: null });

test.beforeAll(async () => {
  await freshData(place);
  db = openPlace(place);
  server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  await untilUp(place);
});

test.afterAll(() => {
  server.kill('SIGTERM');
});

/** Somebody whom no other test knows, with the password of all test people. */
async function aPerson(
  role = 'learner',
  organization = harbour,
): Promise<{ id: string; address: string; name: string }> {
  const id = randomBytes(10).toString('hex');
  const address = `p${id}@${organization.slug}.invalid`;
  const at = new Date();
  await together(db, [
    addingUser(db, { id, name: `Person ${id}`, email: address, createdAt: at, updatedAt: at }),
    addingCredential(db, { userId: id, hash: await hashPassword(PASSWORD), at }),
    addingMember(db, { id, organizationId: organization.id, userId: id, role, createdAt: at }),
  ]);
  return { id, address, name: address.replace('.invalid', '') };
}

function signIn(name: string, secret: string, more: Record<string, string> = {}, cookie?: string) {
  return callAction({ origin, cookie }, '/sign-in', 'signIn', { signInName: name, secret, ...more });
}

/** The status of a page, and where it leads, for the holder of a cookie. */
async function visit(path: string, cookie?: string): Promise<{ status: number; goesTo: string | null; text: string }> {
  const headers = cookie ? { Cookie: `${SESSION_COOKIE}=${cookie}` } : {};
  const answer = await fetch(origin + path, { redirect: 'manual', headers });
  return { status: answer.status, goesTo: answer.headers.get('location'), text: await answer.text() };
}

function sessionSetBy({ cookies }: ActionAnswer): string | undefined {
  return cookies.map((one) => /^faultwright\.session_token=([^;]+)/.exec(one)?.[1]).find((value) => value);
}

test.describe('guessing', () => {
  test('after five wrong tries even the right password has to wait, and works again afterwards', async () => {
    const { name, id } = await aPerson();
    for (let tries = 0; tries < FREE_TRIES; tries++)
      expect((await signIn(name, `wrong ${tries}`)).text).toContain(problems['sign-in-refused']);
    const right = await signIn(name, PASSWORD);
    expect(right.text).toContain('Too many tries under this name');
    expect(sessionSetBy(right)).toBeUndefined();
    await db.update(refusedTries).set({ waitUntil: new Date(0) });
    expect(sessionSetBy(await signIn(name, PASSWORD))).toBeDefined();
    const logged = await db.select().from(logEntries).where(eq(logEntries.personId, id));
    expect(logged.filter(({ event }) => event === 'sign-in-refused')).toHaveLength(FREE_TRIES);
  });

  test('many tries at once gain nothing over one after the other', async () => {
    const { name } = await aPerson();
    const answers = await Promise.all(Array.from({ length: 30 }, (_, n) => signIn(name, `wrong ${n}`)));
    const judged = answers.filter(({ text }) => text.includes(problems['sign-in-refused']));
    expect(judged.length).toBeLessThanOrEqual(FREE_TRIES);
    expect(sessionSetBy(await signIn(name, PASSWORD))).toBeUndefined();
  });

  test('a name that nobody has is refused in the same words as a wrong password', async () => {
    const { name } = await aPerson();
    const strip = ({ text }: ActionAnswer) => text.includes(problems['sign-in-refused']);
    expect(strip(await signIn(name, 'wrong word here'))).toBe(true);
    expect(strip(await signIn('nobody-at-all@test-harbour', 'wrong word here'))).toBe(true);
  });

  test('class codes cannot be tried one after the other for long', async () => {
    const answers = [];
    for (let n = 0; n < FREE_TRIES + 2; n++)
      answers.push(await callAction({ origin }, '/join', 'joinClass', { code: `AAAA-000${n}` }));
    expect(answers.at(-1)?.text).toContain('Too many tries');
    await db.delete(refusedTries);
  });
});

test.describe('sessions', () => {
  test('signing in makes a new session, whatever the browser brought', async () => {
    const { name, id } = await aPerson();
    const planted = await newSession(db, people.secondLearner.id);
    const cookie = sessionSetBy(await signIn(name, PASSWORD, {}, planted));
    expect(cookie).toBeDefined();
    expect(cookie).not.toBe(planted);
    const unsigned = signedCookie('a token of my own', 'a secret of my own that is 40 signs long');
    const other = sessionSetBy(await signIn(name, PASSWORD, {}, unsigned));
    expect(other).toBeDefined();
    expect((await visit('/learn', unsigned)).status).toBe(307);
    expect((await visit('/learn', other)).status).toBe(200);
    expect((await listMemberships(db, id)).length).toBe(1);
  });

  test('a session that was signed out is no session, even when its cookie comes back', async () => {
    const cookie = await newSession(db, people.learner.id);
    expect((await visit('/learn', cookie)).status).toBe(200);
    await callAction({ origin, cookie }, '/learn', 'signOut', {});
    expect((await visit('/learn', cookie)).status).toBe(307);
  });

  test('a cookie that was tampered with counts as none', async () => {
    const cookie = decodeURIComponent(await newSession(db, people.administrator.id));
    const [token = '', signature = ''] = cookie.split('.');
    const tampered = [
      `${token.slice(0, -1)}${token.endsWith('A') ? 'B' : 'A'}.${signature}`,
      `${token}.${signature.replace(/^./, (first) => (first === 'A' ? 'B' : 'A'))}`,
      token,
      `${token}.`,
      decodeURIComponent(signedCookie(token, 'another secret altogether, 40 signs long')),
    ];
    expect((await visit('/people', encodeURIComponent(cookie))).status).toBe(200);
    for (const value of tampered) expect((await visit('/people', encodeURIComponent(value))).status, value).toBe(307);
  });

  test('the session’s cookie is out of reach of scripts and of other sites', async () => {
    const { name } = await aPerson();
    const { cookies } = await signIn(name, PASSWORD);
    const written = cookies.find((one) => one.startsWith(SESSION_COOKIE)) ?? '';
    expect(written).toMatch(/HttpOnly/i);
    expect(written).toMatch(/SameSite=Lax/i);
  });

  test('behind TLS it travels by TLS alone', async () => {
    const secure = { ...placeFor(3137), data: place.data };
    const behindTls = startServer(secure, {
      FAULTWRIGHT_ORIGIN: 'https://learn.example',
      FAULTWRIGHT_LOG: 'silent',
    });
    try {
      await untilUp(secure);
      const { name } = await aPerson();
      const fields = { signInName: name, secret: PASSWORD };
      const { cookies } = await callAction(
        { origin: `http://127.0.0.1:${secure.port}`, says: 'https://learn.example' },
        '/sign-in',
        'signIn',
        fields,
      );
      expect(cookies.find((one) => one.includes('session_token'))).toMatch(/; Secure/i);
    } finally {
      behindTls.kill('SIGTERM');
    }
  });

  test('what is taken away from somebody is gone at once, though they stay signed in', async () => {
    const { id } = await aPerson('administrator');
    const cookie = await newSession(db, id);
    expect((await visit('/people', cookie)).status).toBe(200);
    await together(db, [changingRole(db, { organizationId: harbour.id, userId: id, role: 'learner' })]);
    expect((await visit('/people', cookie)).status).toBe(404);
    expect((await visit('/learn', cookie)).status).toBe(200);
    await db.update(members).set({ deactivatedAt: new Date() }).where(eq(members.userId, id));
    expect(await visit('/learn', cookie)).toMatchObject({ status: 307, goesTo: '/me' });
  });

  test('after signing in one stays on this site', async () => {
    for (const next of [
      'https://evil.example/',
      '//evil.example',
      '/\\evil.example',
      '/.//evil.example',
      'javascript:alert(1)',
    ]) {
      const { name } = await aPerson();
      const { goesTo } = await signIn(name, PASSWORD, { next });
      expect(goesTo, next).toMatch(/^\/learn(;|$)/);
    }
  });
});

test.describe('links', () => {
  async function anInvitation(changes: Partial<typeof invitations.$inferInsert> = {}): Promise<string> {
    const token = randomBytes(32).toString('base64url');
    await db.insert(invitations).values({
      id: randomBytes(10).toString('hex'),
      organizationId: harbour.id,
      inviterId: people.administrator.id,
      role: 'learner',
      status: 'pending',
      expiresAt: new Date(Date.now() + 3_600_000),
      createdAt: new Date(),
      tokenHash: createHash('sha256').update(token).digest('hex'),
      ...changes,
    });
    return token;
  }

  function accept(token: string, more: Record<string, string> = {}) {
    const handle = `n${randomBytes(6).toString('hex')}`;
    const fields = { token, name: 'New Person', signInName: handle, secret: 'twelve blue lorries', ...more };
    return callAction({ origin }, `/invited/${token}`, 'acceptInvitation', fields).then((answer) => ({
      answer,
      address: `${handle}@${harbour.slug}.invalid`,
    }));
  }

  test('an invitation lets in once', async () => {
    const token = await anInvitation();
    expect((await accept(token)).answer.goesTo).toMatch(/^\/learn/);
    expect((await accept(token)).answer.text).toContain(problems['link-dead']);
  });

  test('an invitation taken up by two at once lets in one', async () => {
    const token = await anInvitation();
    const both = await Promise.all([accept(token), accept(token)]);
    const found = await Promise.all(both.map(({ address }) => findUserByAddress(db, address)));
    expect(found.filter((user) => user !== undefined)).toHaveLength(1);
  });

  test('an invitation that has ended or was taken back says the same as one that never was', async () => {
    const dead = [
      await anInvitation({ expiresAt: new Date(Date.now() - 1000) }),
      await anInvitation({ status: 'withdrawn' }),
      'never-was',
    ];
    for (const token of dead) {
      expect((await visit(`/invited/${token}`)).text).toContain(messages.invited.dead);
      expect((await accept(token)).answer.text).toContain(problems['link-dead']);
    }
  });

  test('whoever takes up an invitation becomes what it says, whatever else they send', async () => {
    const more = {
      role: 'administrator',
      roles: 'administrator',
      keeper: 'true',
      organizationId: college.id,
      id: 'mine',
    };
    const { address } = await accept(await anInvitation(), more);
    const user = await findUserByAddress(db, address);
    expect(user?.keeper).toBe(false);
    expect(user?.id).not.toBe('mine');
    expect(await listMemberships(db, user?.id ?? '')).toMatchObject([{ organizationId: harbour.id, role: 'learner' }]);
  });

  test('a class code makes a learner and nothing more', async () => {
    await db.insert(classes).values({
      id: randomBytes(10).toString('hex'),
      organizationId: harbour.id,
      name: 'Attack class',
      joinCode: 'ATTACK42',
      joinCodeEndsAt: new Date(Date.now() + 3_600_000),
      createdAt: new Date(),
    });
    const fields = {
      code: 'attack42',
      name: 'Jo',
      signInName: 'jo-attack',
      secret: '493817',
      roles: 'administrator',
      keeper: '1',
    };
    expect((await callAction({ origin }, '/join', 'joinClass', fields)).goesTo).toMatch(/^\/learn/);
    const user = await findUserByAddress(db, `jo-attack@${harbour.slug}.invalid`);
    expect(user?.keeper).toBe(false);
    expect(await listMemberships(db, user?.id ?? '')).toMatchObject([{ role: 'learner' }]);
  });

  test('a password set by one of two links leaves nothing to the other', async () => {
    const { id } = await aPerson();
    const administrator = { origin, cookie: await newSession(db, people.administrator.id) };
    const tokens = [];
    for (let n = 0; n < 2; n++) {
      const made = await callAction(administrator, `/people/${id}`, 'makeResetLink', { personId: id });
      tokens.push(/\/reset\/([\w-]{20,})/.exec(made.text)?.[1] ?? '');
    }
    const [first = '', second = ''] = tokens;
    const set = (token: string) =>
      callAction({ origin }, `/reset/${token}`, 'setNewPassword', { token, secret: 'a brand new password' });
    expect((await set(second)).goesTo).toMatch(/^\/sign-in/);
    expect((await set(first)).text).toContain(problems['link-dead']);
  });

  test('a link to a new password works once, not after its time, and signs everybody out', async () => {
    const { id, name } = await aPerson();
    const session = await newSession(db, id);
    const administrator = { origin, cookie: await newSession(db, people.administrator.id) };
    const made = await callAction(administrator, `/people/${id}`, 'makeResetLink', { personId: id });
    const token = /\/reset\/([\w-]{20,})/.exec(made.text)?.[1] ?? '';
    expect(token).not.toBe('');
    const set = (secret: string) => callAction({ origin }, `/reset/${token}`, 'setNewPassword', { token, secret });
    expect((await set('short')).text).toContain(problems['password-short']);
    expect((await set('a brand new password')).goesTo).toMatch(/^\/sign-in/);
    expect((await visit('/learn', session)).status).toBe(307);
    expect(sessionSetBy(await signIn(name, 'a brand new password'))).toBeDefined();
    expect((await set('one more new password')).text).toContain(problems['link-dead']);

    const late = await callAction(administrator, `/people/${id}`, 'makeResetLink', { personId: id });
    const lateToken = /\/reset\/([\w-]{20,})/.exec(late.text)?.[1] ?? '';
    await db.update(verifications).set({ expiresAt: new Date(Date.now() - 1000) });
    const answer = await callAction({ origin }, `/reset/${lateToken}`, 'setNewPassword', {
      token: lateToken,
      secret: 'yet another password',
    });
    expect(answer.text).toContain(problems['link-dead']);
  });
});

test.describe('what people write', () => {
  const EVIL = '<img src=x onerror="document.title=\'owned\'"><b>Bold</b>';

  test('HTML in a name is shown as it was typed', async ({ page }) => {
    await signInAs(page, 'administrator', { place });
    const { id } = await aPerson();
    await db.update(users).set({ name: EVIL }).where(eq(users.id, id));
    for (const path of ['/people', `/people/${id}`, '/log']) {
      await page.goto(path);
      await expect(page.locator('main b', { hasText: /^Bold$/ })).toHaveCount(0);
      await expect(page.locator('img[src="x"]')).toHaveCount(0);
      expect(await page.title()).not.toBe('owned');
    }
    await page.goto(`/people/${id}`);
    await expect(page.getByText('<b>Bold</b>').first()).toBeVisible();
  });

  test('nobody makes themselves more than they are', async () => {
    const { id } = await aPerson();
    const caller = { origin, cookie: await newSession(db, id) };
    const more = { keeper: 'true', role: 'administrator', roles: 'administrator', email: 'a@b.example', id: 'mine' };
    await callAction(caller, '/me', 'renameSelf', { name: 'Plain Name', ...more });
    const [user] = await db.select().from(users).where(eq(users.id, id));
    expect(user).toMatchObject({ name: 'Plain Name', keeper: false });
    expect(user?.email).not.toBe('a@b.example');
    expect(await listMemberships(db, id)).toMatchObject([{ role: 'learner' }]);
  });

  test('an instructor cannot make an administrator', async () => {
    const caller = { origin, cookie: await newSession(db, people.instructor.id) };
    const handle = `x${randomBytes(6).toString('hex')}`;
    const fields = {
      name: 'Too Much',
      signInName: handle,
      handle,
      pin: '493817',
      secret: '493817',
      roles: 'administrator',
    };
    await callAction(caller, '/people/add', 'addPerson', fields);
    const user = await findUserByAddress(db, `${handle}@${harbour.slug}.invalid`);
    const held = user ? (await listMemberships(db, user.id)).map(({ role }) => role) : [];
    expect(held).not.toContain('administrator');
    const invited = await callAction(caller, '/people', 'invitePerson', { roles: 'administrator' });
    expect(invited.text).not.toMatch(/\/invited\/[\w-]{20,}/);
  });
});
