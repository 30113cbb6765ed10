import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { type SecretOwner, secretFault } from '@/lib/accounts/secret-rules';
import { formatUserName, isHandle, isShortName, storedAddress } from '@/lib/accounts/sign-in-name';
import { makeUpSchema } from '../policies/make-up';

const name = z.string().trim().min(1).max(80);

/** Staff sign in with an e-mail under a domain that is kept for examples. @source RFC 2606, section 2. */
const staffSchema = z.strictObject({ name, address: z.string().regex(/^[a-z.]+@[a-z.-]+\.example$/) });

const apprenticeSchema = z
  .strictObject({
    name,
    /** Stands before the @ of the user name. */
    handle: z.string().refine(isHandle, { error: 'expected what may stand before the @ of a user name' }),
    makeUp: makeUpSchema,
    /** How many were brought to their end. */
    attempts: z.number().int().min(0).max(12),
    /** Since when. */
    weeks: z.number().int().min(1).max(52),
    /** One more is under way. */
    open: z.boolean().default(false),
    /** Has made the attempts of hand-played.ts, too. */
    handPlayed: z.boolean().default(false),
    /** Holds a certificate. */
    certified: z.boolean().default(false),
  })
  .refine(({ attempts, weeks }) => attempts <= weeks, {
    path: ['attempts'],
    error: 'expected no more attempts than weeks',
  });

const fieldsSchema = z.strictObject({
  name,
  shortName: z.string().refine(isShortName, { error: 'expected what may be a short name' }),
  /** Of all staff. */
  password: z.string(),
  /** Of all apprentices. */
  pin: z.string(),
  administrator: staffSchema,
  instructors: z.array(staffSchema).min(1),
  shopLead: staffSchema,
  class: name,
  apprentices: z.array(apprenticeSchema).min(1),
});

/** An invented organisation with its people, as content describes it. */
export type Demo = z.infer<typeof fieldsSchema>;
export type DemoApprentice = Demo['apprentices'][number];

const demoSchema = fieldsSchema
  .refine((demo) => allGood(demo.password, staffOf(demo)), {
    path: ['password'],
    error: 'expected a password that people would be allowed',
  })
  .refine((demo) => allGood(demo.pin, apprenticesOf(demo)), {
    path: ['pin'],
    error: 'expected a PIN that people would be allowed',
  })
  .refine((demo) => allDifferent(staffOf(demo)), {
    path: ['instructors'],
    error: 'expected each address of the staff once',
  })
  .refine((demo) => allDifferent(apprenticesOf(demo)), {
    path: ['apprentices'],
    error: 'expected each handle once',
  });

/** @throws ZodError saying where it is not as expected. */
export function parseDemo(raw: unknown): Demo {
  return demoSchema.parse(raw);
}

export function loadDemo(): Demo {
  return parseDemo(JSON.parse(readFileSync(join(process.cwd(), 'content/demo/organisation.json'), 'utf8')));
}

function staffOf({ administrator, instructors, shopLead }: Demo): SecretOwner[] {
  return [administrator, ...instructors, shopLead];
}

function apprenticesOf({ apprentices, shortName }: Demo): SecretOwner[] {
  return apprentices.map(({ name, handle }) => ({
    name,
    address: storedAddress(formatUserName({ handle, slug: shortName })),
  }));
}

function allGood(secret: string, owners: readonly SecretOwner[]): boolean {
  return owners.every((owner) => secretFault(secret, owner) === undefined);
}

function allDifferent(owners: readonly SecretOwner[]): boolean {
  return new Set(owners.map(({ address }) => address)).size === owners.length;
}
