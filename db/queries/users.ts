import { and, count, eq, inArray } from 'drizzle-orm';
import type { Db } from '../client';
import { accounts, users } from '../schema';
import type { Statement } from '../together';

export type User = typeof users.$inferSelect;

export function addingUser(db: Db, user: typeof users.$inferInsert): Statement {
  return db.insert(users).values(user);
}

/** Gives a person a password or PIN to sign in with. */
export function addingCredential(db: Db, { userId, hash, at }: { userId: string; hash: string; at: Date }): Statement {
  return db.insert(accounts).values({
    id: userId,
    accountId: userId,
    providerId: 'credential',
    userId,
    password: hash,
    createdAt: at,
    updatedAt: at,
  });
}

/** Sets somebody's password or PIN anew. */
export function changingCredential(
  db: Db,
  { userId, hash, at }: { userId: string; hash: string; at: Date },
): Statement {
  return db
    .update(accounts)
    .set({ password: hash, updatedAt: at })
    .where(and(eq(accounts.userId, userId), eq(accounts.providerId, 'credential')));
}

/** A person by what they sign in with, as stored; undefined when nobody does. */
export async function findUserByAddress(db: Db, address: string): Promise<User | undefined> {
  const [row] = await db.select().from(users).where(eq(users.email, address));
  return row;
}

export async function findUser(db: Db, userId: string): Promise<User | undefined> {
  const [row] = await db.select().from(users).where(eq(users.id, userId));
  return row;
}

/** How many people the installation has. */
export async function countUsers(db: Db): Promise<number> {
  const [row] = await db.select({ value: count() }).from(users);
  return row?.value ?? 0;
}

/** Gives a person another name. */
export function changingName(db: Db, { userId, name, at }: { userId: string; name: string; at: Date }): Statement {
  return db.update(users).set({ name, updatedAt: at }).where(eq(users.id, userId));
}

/** Whether somebody has a password or PIN yet. */
export async function hasCredential(db: Db, userId: string): Promise<boolean> {
  const rows = await db.select({ id: accounts.id }).from(accounts).where(eq(accounts.userId, userId)).limit(1);
  return rows.length > 0;
}

/** Addresses among some that somebody signs in with already. */
export async function listTaken(db: Db, addresses: readonly string[]): Promise<string[]> {
  const rows = await db
    .select({ address: users.email })
    .from(users)
    .where(inArray(users.email, [...addresses]));
  return rows.map(({ address }) => address);
}
