import { z } from 'zod';
import type { ProblemCode } from '@/app/_server/problems';
import { type SecretFault, secretFault } from '@/lib/accounts/secret-rules';
import { addressFrom } from '@/lib/accounts/sign-in-name';

/** Somebody who makes themselves a sign-in. */
export interface Newcomer {
  name: string;
  /** As stored. */
  address: string;
  secret: string;
}

/** Longest name that a person may have. */
export const LONGEST_NAME = 80;

/** Fields of the form that a newcomer fills in. */
export const newcomerSchema = z.object({
  name: z.string().trim().min(1).max(LONGEST_NAME),
  signInName: z.string().trim().min(1).max(200),
  secret: z.string().min(1).max(200),
});

/** A newcomer out of the form, for an organisation with a short name; or what will not do. */
export function newcomerFrom(
  { name, signInName, secret }: z.infer<typeof newcomerSchema>,
  slug: string,
): { newcomer: Newcomer } | { error: Extract<ProblemCode, SecretFault | 'sign-in-name'> } {
  const address = addressFrom(signInName, slug);
  if (!address) return { error: 'sign-in-name' };
  const fault = secretFault(secret, { name, address });
  return fault ? { error: fault } : { newcomer: { name, address, secret } };
}
