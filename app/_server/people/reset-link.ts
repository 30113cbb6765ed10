import { auth } from '../auth';
import { env } from '../env';
import { makeToken } from '../link-token';

const HOUR_MS = 60 * 60 * 1000;
/** Long enough to be handed over within a shift and the next. */
export const RESET_HOURS = 24;
/** Somebody new may be away for some days. */
export const FIRST_LINK_HOURS = 7 * 24;

/** A link that sets a person's password or PIN anew, once. */
export async function resetLink(userId: string, hours: number): Promise<string> {
  const token = makeToken();
  const { internalAdapter } = await auth().$context;
  await internalAdapter.createVerificationValue({
    identifier: `reset-password:${token}`,
    value: userId,
    expiresAt: new Date(Date.now() + hours * HOUR_MS),
  });
  return `${env.FAULTWRIGHT_ORIGIN}/reset/${token}`;
}
