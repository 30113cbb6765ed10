import type { Page } from '@playwright/test';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { addingClass } from '@/db/queries/classes';
import { type LogEntry, listLogEntries } from '@/db/queries/log-entries';
import { addingMember, findMember } from '@/db/queries/members';
import { listPlaces } from '@/db/queries/people';
import { listSessions } from '@/db/queries/sessions';
import { findUser, findUserByAddress } from '@/db/queries/users';
import { together } from '@/db/together';
import { anAttempt } from '../support/attempt-rows';
import { callAction } from '../support/call-action';
import { codeOf } from '../support/case-codes';
import { newSession } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const origin = `http://127.0.0.1:${SHARED_PORT}`;
const { people: words, problems } = messages;

/** One connection: statements that run together have to be made for it. */
let db: Db;
let administrator: Somebody;

test.beforeAll(() => {
  db = openPlace(placeFor(SHARED_PORT));
});

test.beforeEach(async ({ page }) => {
  administrator = await somebodyNew('administrator');
  await signInNew(page, administrator);
});

const colleague = (role: string) => somebodyNew(role, administrator.organizationId);
const memberOf = ({ id }: Pick<Somebody, 'id'>) => findMember(db, administrator.organizationId, id);
const addressed = (handle: string) => findUserByAddress(db, `${handle}@${administrator.organizationId}.invalid`);

async function logged(): Promise<LogEntry[]> {
  return listLogEntries(db, administrator.organizationId, {}, 50);
}

async function eventsLogged(): Promise<string[]> {
  return (await logged()).map(({ event }) => event);
}

async function addClass(name: string): Promise<string> {
  const id = `class-${administrator.organizationId}-${name.toLowerCase()}`;
  const { organizationId } = administrator;
  await together(db, [addingClass(db, { id, organizationId, name, createdAt: new Date() })]);
  return id;
}

/** What is shown once, to hand on. */
async function handed(page: Page): Promise<string> {
  return page.getByRole('status').getByRole('textbox').inputValue();
}

async function signInWith(page: Page, name: string, secret: string): Promise<void> {
  await page.context().clearCookies();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail or user name').fill(name);
  await page.getByLabel(/^Password/).fill(secret);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
}

const listed = (page: Page) => page.getByRole('main').getByRole('link', { name: /^Pat/ });
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const roleBox = (page: Page, name: string) => page.getByRole('checkbox', { name, exact: true });

test.describe('somebody added', () => {
  test('with a user name gets a PIN that is shown once, signs in with it, and is in their class', async ({ page }) => {
    const classId = await addClass('Mornings');
    await page.goto('/people/add');
    await field(page, words.name).fill('Kit <b>Ash</b>');
    await field(page, words.signInName).fill('kit');
    await page.getByRole('combobox', { name: words.class, exact: true }).selectOption('Mornings');
    await page.getByRole('button', { name: words.add }).click();
    await expect(page.getByText(words.added)).toBeVisible();
    const [name = '', pin = ''] = (await handed(page)).split(' · PIN ');
    expect(name).toBe(`kit@${administrator.organizationId}`);
    expect(pin).toMatch(/^\d{6}$/);

    const user = await addressed('kit');
    const places = await listPlaces(db, administrator.organizationId, [user?.id ?? '']);
    expect(places.map((place) => place.classId)).toEqual([classId]);
    const entries = await logged();
    expect(entries).toMatchObject([{ event: 'person-added', personId: user?.id, details: { roles: ['learner'] } }]);
    expect(JSON.stringify(entries)).not.toContain('Ash');
    await page.goto('/people');
    await expect(page.getByRole('row', { name: /Kit <b>Ash<\/b>/ })).toContainText('Mornings');
    expect(await page.content()).not.toContain(pin);
    await signInWith(page, name, pin);
  });

  test('with an e-mail gets a link on which they set a password', async ({ page }) => {
    const email = `lou@${administrator.organizationId}.example`;
    await page.goto('/people/add');
    await field(page, words.name).fill('Lou Oak');
    await field(page, words.signInName).fill(email);
    await roleBox(page, 'instructor').check();
    await page.getByRole('button', { name: words.add }).click();
    await expect(page.getByText(words.added)).toBeVisible();
    const link = await handed(page);
    await page.context().clearCookies();
    await page.goto(link);
    await page.getByLabel('New password or PIN').fill('quiet harbour morning');
    await page.getByRole('button', { name: 'Set it' }).click();
    await page.waitForURL(/\/sign-in/);
    await signInWith(page, email, 'quiet harbour morning');
    await page.goto('/people');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(words.title);
  });

  test('twice, or as what cannot be, is said, and nothing typed is lost', async ({ page }) => {
    await addClass('Evenings');
    await page.goto('/people/add');
    const [name, signIn] = [field(page, words.name), field(page, words.signInName)];
    const add = page.getByRole('button', { name: words.add });
    const refusedWith = async (sentence: string) => {
      await add.click();
      await expect(page.getByText(sentence)).toBeVisible();
      await expect(name).toHaveValue('Kit Ash');
    };
    await name.fill('Kit Ash');
    await signIn.fill(administrator.signInName);
    await refusedWith(problems['address-known']);
    await signIn.fill('kit ash');
    await refusedWith(problems['sign-in-name']);
    await signIn.fill('kit');
    await field(page, words.pin).fill('123456');
    await refusedWith(problems['pin-easy']);
    await roleBox(page, 'learner').uncheck();
    await refusedWith(problems['roles-given']);
    await roleBox(page, 'instructor').check();
    await page.getByRole('combobox', { name: words.class, exact: true }).selectOption('Evenings');
    await refusedWith(problems['class-for-learners']);
    expect(await addressed('kit')).toBeUndefined();
    expect(await logged()).toEqual([]);
  });

  test('at the same moment twice is one person', async () => {
    const caller = { origin, cookie: await newSession(db, administrator.id, administrator.organizationId) };
    const fields = { name: 'Kit Ash', signInName: 'kit', roles: 'learner' };
    const answers = await Promise.all([1, 2, 3].map(() => callAction(caller, '/people/add', 'addPerson', fields)));
    const refused = answers.filter(({ text }) => text.includes('Somebody signs in with that already.'));
    expect(refused).toHaveLength(2);
    expect(await eventsLogged()).toEqual(['person-added']);
  });
});

test.describe('an invitation', () => {
  test('is listed while it is open, and opens nothing once it is taken back', async ({ page }) => {
    await page.goto('/people');
    await roleBox(page, 'instructor').check();
    await page.getByRole('button', { name: words.invite }).click();
    await expect(page.getByText(words.invited)).toBeVisible();
    const link = await handed(page);
    const open = page.getByRole('listitem').filter({ hasText: 'learner, instructor, until' });
    await expect(open).toHaveCount(1);
    expect((await page.request.get(link)).ok()).toBe(true);
    await open.getByRole('button', { name: /^Take back/ }).click();
    await expect(open).toHaveCount(0);
    await page.goto(link);
    await expect(page.getByText('This link opens nothing')).toBeVisible();
    expect(await eventsLogged()).toEqual(['invitation-withdrawn', 'invitation-made']);
  });
});

test.describe('the list of people', () => {
  test('is searched by name and by role', async ({ page }) => {
    const [learner, instructor] = [await colleague('learner'), await colleague('instructor')];
    await page.goto('/people');
    await expect(listed(page)).toHaveCount(3);
    await page.getByLabel(words.search).fill(learner.id.slice(0, 12));
    await page.getByRole('button', { name: words.find }).click();
    await expect(listed(page)).toHaveText([learner.name]);
    await page.goto('/people?role=instructor');
    await expect(listed(page)).toHaveText([instructor.name]);
    await page.goto('/people?search=%25%25%25&role=nothing&role=learner');
    await expect(page.getByText('Nobody matches.')).toBeVisible();
  });

  test('shows each reader what they may do, and no more', async ({ page }) => {
    const learner = await colleague('learner');
    await signInNew(page, await colleague('instructor'));
    await page.goto('/people/add');
    await expect(page.getByRole('main').getByRole('checkbox')).toHaveCount(1);
    await page.goto(`/people/${learner.id}`);
    await expect(page.getByRole('button', { name: words.setPin })).toBeVisible();
    await expect(page.getByRole('button', { name: words.rename })).toBeVisible();
    for (const name of [words.setRoles, words.deactivate, words.reset])
      await expect(page.getByRole('main').getByRole('button', { name })).toHaveCount(0);
    for (const name of [words.merge, words.erase, words.exportJson])
      await expect(page.getByRole('link', { name })).toHaveCount(0);
    await page.goto(`/people/${administrator.id}`);
    await expect(page.getByRole('main').getByRole('button')).toHaveCount(0);

    await signInNew(page, await colleague('shop-lead'));
    await page.goto('/people');
    await expect(page.getByRole('link', { name: words.add })).toHaveCount(0);
    await expect(page.getByRole('button', { name: words.invite })).toHaveCount(0);
    for (const path of ['/people/add', '/people/import', `/people/${learner.id}/merge`, `/people/${learner.id}/erase`])
      expect((await page.request.get(path)).status(), path).toBe(404);
  });

  test.describe('on a phone', () => {
    test.use({ viewport: { width: 360, height: 800 } });

    test('needs no sideways scrolling, however long a name is', async ({ page }) => {
      await page.goto('/people/add');
      await field(page, words.name).fill('W'.repeat(80));
      await field(page, words.signInName).fill('w'.repeat(32));
      await page.getByRole('button', { name: words.add }).click();
      await expect(page.getByText(words.added)).toBeVisible();
      const user = await addressed('w'.repeat(32));
      const paths = ['', '/add', '/import', `/${user?.id}`, `/${user?.id}/merge`, `/${user?.id}/erase`];
      for (const path of paths) {
        await page.goto(`/people${path}`);
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(width, path).toBeLessThanOrEqual(360);
      }
    });
  });
});

test.describe('a list that is imported', () => {
  const HEAD = 'name,email,user name,roles,class';

  test('is looked at first, comes in without its bad rows, and hands out PINs once', async ({ page }) => {
    await addClass('Mornings');
    await page.goto('/people/import');
    const list = `${HEAD}\nKit Ash,,kit,,mornings\n,,lou,,\nBo Elm,,bo,boss,\nKat Ash,,kit,,\n<i>Ada</i>,,ada,"learner, instructor",`;
    await page.getByLabel(words.paste).fill(list);
    await page.getByRole('button', { name: words.preview }).click();
    await expect(page.getByText('2 rows can be imported. 3 rows cannot, and are left out.')).toBeVisible();
    const rows = page.getByRole('row');
    await expect(rows.nth(2)).toContainText('has no name');
    await expect(rows.nth(3)).toContainText('names a role that there is not: boss');
    await expect(rows.nth(4)).toContainText('signs in like another row');
    expect(await addressed('kit')).toBeUndefined();
    await expect(page.getByLabel(words.paste)).toHaveValue(list);

    await page.getByRole('button', { name: 'Add these 2 people' }).click();
    await expect(page.getByRole('heading', { name: '2 people are in' })).toBeVisible();
    const kit = page.getByRole('row', { name: /^Kit Ash/ });
    const pin = (await kit.getByRole('cell').last().textContent()) ?? '';
    await expect(page.getByText('<i>Ada</i>')).toBeVisible();
    const entries = await logged();
    expect(entries.map(({ event }) => event)).toEqual(['people-imported', 'person-added', 'person-added']);
    expect(entries.map(({ personId }) => personId)).toContain((await addressed('ada'))?.id);
    await signInWith(page, `kit@${administrator.organizationId}`, pin);
  });

  test('prints as names with their PINs, and nothing of the form', async ({ page }) => {
    await page.goto('/people/import');
    await page.getByLabel(words.paste).fill(`${HEAD}\nKit Ash,,kit,,`);
    await page.getByRole('button', { name: words.preview }).click();
    await page.getByRole('button', { name: 'Add this person' }).click();
    await expect(page.getByRole('heading', { name: '1 person is in' })).toBeVisible();
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByRole('row', { name: /^Kit Ash/ })).toBeVisible();
    await expect(page.getByLabel(words.paste)).toBeHidden();
    await expect(page.getByRole('main').getByRole('button')).toHaveCount(0);
  });

  test('may be a file of an older spreadsheet; one that is too large is said to be', async ({ page }) => {
    await page.goto('/people/import');
    const file = page.getByLabel(words.file);
    const latin = Buffer.from(`${HEAD}\nJosé Ash,,jose,,`, 'latin1');
    await file.setInputFiles({ name: 'people.csv', mimeType: 'text/csv', buffer: latin });
    await expect(page.getByLabel(words.paste)).toHaveValue(/José Ash/);
    const large = Buffer.alloc(1_000_001, 'x');
    await file.setInputFiles({ name: 'large.csv', mimeType: 'text/csv', buffer: large });
    await expect(page.getByText(problems['import-big'])).toBeVisible();
    await expect(page.getByLabel(words.paste)).toHaveValue(/José Ash/);
  });

  test('that has changed since it was looked at adds nobody', async ({ page }) => {
    await page.goto('/people/import');
    await page.getByLabel(words.paste).fill(`${HEAD}\nKit Ash,,kit,,\nLou Oak,,lou,,`);
    await page.getByRole('button', { name: words.preview }).click();
    await expect(page.getByRole('button', { name: 'Add these 2 people' })).toBeVisible();
    const caller = { origin, cookie: await newSession(db, administrator.id, administrator.organizationId) };
    await callAction(caller, '/people/add', 'addPerson', { name: 'Kit', signInName: 'kit', roles: 'learner' });
    await page.getByRole('button', { name: 'Add these 2 people' }).click();
    await expect(page.getByText(problems['import-changed'])).toBeVisible();
    expect(await addressed('lou')).toBeUndefined();
    await expect(page.getByLabel(words.paste)).toHaveValue(/Lou Oak/);
  });

  test('gives no role that whoever imports may not give', async () => {
    const instructor = await colleague('instructor');
    const caller = { origin, cookie: await newSession(db, instructor.id, administrator.organizationId) };
    const csv = `${HEAD}\nKit Ash,,kit,administrator,\nLou Oak,,lou,,`;
    const seen = await callAction(caller, '/people/import', 'previewImport', { csv });
    expect(seen.text).toContain('names a role that you may not give: administrator');
    await callAction(caller, '/people/import', 'importPeople', { csv, good: '2' });
    expect(await addressed('lou')).toBeUndefined();
    await callAction(caller, '/people/import', 'importPeople', { csv, good: '1' });
    expect(await addressed('lou')).toBeDefined();
    expect(await addressed('kit')).toBeUndefined();
  });
});

test.describe('one person', () => {
  test('gets a new PIN, which ends their sessions', async ({ page }) => {
    const learner = await colleague('learner');
    await newSession(db, learner.id, administrator.organizationId);
    await page.goto(`/people/${learner.id}`);
    await page.getByRole('button', { name: words.setPin }).click();
    await expect(page.getByText(words.pinSet)).toBeVisible();
    const pin = await handed(page);
    expect(await listSessions(db, learner.id, new Date(), 10)).toEqual([]);
    expect(JSON.stringify(await logged())).not.toContain(pin);
    await signInWith(page, learner.signInName, pin);
  });

  test('is called something else, is something else, is shut out and let in again', async ({ page }) => {
    const learner = await colleague('learner');
    const path = `/people/${learner.id}`;
    await page.goto(path);
    await field(page, words.name).fill('Robin Fell');
    await page.getByRole('button', { name: words.rename }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Robin Fell' })).toBeVisible();
    await roleBox(page, 'shop lead').check();
    await page.getByRole('button', { name: words.setRoles }).click();
    await expect(page.getByText(words.rolesSet)).toBeVisible();
    expect((await memberOf(learner))?.role).toBe('learner,shop-lead');

    const cookie = await newSession(db, learner.id, administrator.organizationId);
    const start = () =>
      callAction({ origin, cookie }, '/learn', 'startCaseByCode', { code: 'x', key: '0123456789abcdef' });
    expect((await start()).text).not.toContain(problems['not-there']);
    await page.getByRole('button', { name: words.deactivate }).click();
    await expect(page.getByRole('button', { name: words.reactivate })).toBeVisible();
    expect((await start()).text).toContain(problems['not-there']);
    await page.getByRole('button', { name: words.reactivate }).click();
    await expect(page.getByRole('button', { name: words.deactivate })).toBeVisible();
    expect(await eventsLogged()).toEqual(['person-reactivated', 'person-deactivated', 'roles-set', 'person-renamed']);
  });

  test('shows their cases here, each with its system', async ({ page }) => {
    const learner = await colleague('learner');
    const { organizationId } = administrator;
    const theCase = { caseCode: codeOf('lift-pump-weak', 800), learnerId: learner.id, organizationId };
    await recordAttempt(db, anAttempt({ id: `case-${learner.id}`, ...theCase }));
    await page.goto(`/people/${learner.id}`);
    const row = page.getByRole('row').filter({ hasText: theCase.caseCode });
    await expect(row).toContainText(words.openCase);
    await expect(row).toContainText('Tern 13');
    await expect(row.getByRole('link')).toHaveCount(0);
  });

  test('who is the last administrator stays one', async ({ page }) => {
    await page.goto(`/people/${administrator.id}`);
    await roleBox(page, 'administrator').uncheck();
    await roleBox(page, 'learner').check();
    await page.getByRole('button', { name: words.setRoles }).click();
    await expect(page.getByText(problems['last-administrator'])).toBeVisible();
    await expect(page.getByRole('link', { name: words.erase })).toHaveCount(0);
    expect((await memberOf(administrator))?.role).toBe('administrator');
    const caller = { origin, cookie: await newSession(db, administrator.id, administrator.organizationId) };
    const [personId, path] = [administrator.id, `/people/${administrator.id}`];
    const shut = await callAction(caller, path, 'deactivatePerson', { personId });
    expect(shut.text).toContain(problems['not-yourself']);
    const erased = await callAction(caller, `${path}/erase`, 'erasePerson', { personId, name: administrator.name });
    expect(erased.text).toContain(problems['not-yourself']);
    expect(await logged()).toEqual([]);
  });

  test('who belongs elsewhere too has nobody change how they sign in', async ({ page }) => {
    const learner = await colleague('learner');
    const elsewhere = await somebodyNew('administrator');
    const { organizationId } = elsewhere;
    const closed = { id: `there-${learner.id}`, organizationId, userId: learner.id, role: 'learner' };
    await together(db, [addingMember(db, { ...closed, createdAt: new Date(), deactivatedAt: new Date() })]);
    await page.goto(`/people/${learner.id}`);
    await expect(page.getByText(words.ownSignIn)).toBeVisible();
    for (const name of [words.setPin, words.rename, words.reset])
      await expect(page.getByRole('button', { name })).toHaveCount(0);
    const caller = { origin, cookie: await newSession(db, administrator.id, administrator.organizationId) };
    const path = `/people/${learner.id}`;
    const { text } = await callAction(caller, path, 'setPin', { personId: learner.id, pin: '493817' });
    expect(text).toContain(problems['not-there']);
  });
});

test.describe('a double', () => {
  test('is merged once what moves has been seen', async ({ page }) => {
    const [kept, double] = [await colleague('learner'), await colleague('shop-lead')];
    const { organizationId } = administrator;
    await recordAttempt(db, anAttempt({ id: `case-${double.id}`, learnerId: double.id, organizationId }));
    await page.goto(`/people/${kept.id}/merge`);
    await page.getByLabel(words.double).selectOption(double.id);
    await page.getByRole('button', { name: words.look }).click();
    await expect(page.getByText('1 case moves, 0 of it finished.')).toBeVisible();
    await expect(page.getByText(`${kept.name} is then: learner, shop lead.`)).toBeVisible();
    expect(await memberOf(double)).toBeDefined();
    await page.getByRole('button', { name: words.mergeNow }).click();
    await page.waitForURL(new RegExp(`/people/${kept.id}$`));
    await expect(page.getByRole('row').filter({ hasText: words.openCase })).toHaveCount(1);
    expect(await findUser(db, double.id)).toBeUndefined();
    expect((await memberOf(kept))?.role).toBe('learner,shop-lead');
    expect(await logged()).toMatchObject([
      { event: 'people-merged', personId: kept.id, details: { double: double.id } },
    ]);
  });

  test('of another organisation, or oneself, is none', async () => {
    const kept = await colleague('learner');
    const stranger = await somebodyNew('learner');
    const caller = { origin, cookie: await newSession(db, administrator.id, administrator.organizationId) };
    const merge = async (doubleId: string) =>
      (await callAction(caller, `/people/${kept.id}/merge`, 'mergePeople', { personId: kept.id, doubleId })).text;
    expect(await merge(stranger.id)).toContain(problems['not-there']);
    expect(await merge(kept.id)).toContain(problems['same-person']);
    expect(await merge(administrator.id)).toContain(problems['not-yourself']);
    expect(await findUser(db, stranger.id)).toBeDefined();
    expect(await logged()).toEqual([]);
  });
});

test('somebody is erased once their name is typed, and the log calls them erased', async ({ page }) => {
  const learner = await colleague('learner');
  await page.goto(`/people/${learner.id}/erase`);
  await expect(page.getByText(words.eraseNothingKept)).toBeVisible();
  const [name, erase] = [page.getByLabel(words.eraseName), page.getByRole('button', { name: words.eraseNow })];
  await name.fill('Somebody Else');
  await erase.click();
  await expect(page.getByText(problems['name-to-erase'])).toBeVisible();
  expect(await findUser(db, learner.id)).toBeDefined();
  await name.fill(learner.name);
  await erase.click();
  await page.waitForURL(/\/people$/);
  await expect(page.getByText(learner.name)).toHaveCount(0);
  expect(await findUser(db, learner.id)).toBeUndefined();
  await page.goto('/log');
  await expect(page.getByRole('row').nth(1)).toContainText('erased erased person.');
});
