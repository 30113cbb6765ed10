import { betterAuth } from 'better-auth';
import { drizzleAdapter } from 'better-auth/adapters/drizzle';
import { nextCookies } from 'better-auth/next-js';
import { organization } from 'better-auth/plugins';
import * as schema from '@/db/schema';
import { MAX_PASSWORD, PIN_LENGTH } from '@/lib/accounts/secret-rules';
import { database } from './database';
import { env } from './env';
import { ADDRESS_HEADER } from './http/address-header';
import { secret } from './secret';

const DAY_S = 24 * 60 * 60;

/**
 * Sessions, password hashes and the organisation being worked in, kept by better-auth. Its own addresses are not served:
 * everything comes in by our doors, which ask `can` first, and calls it from the server.
 */
export const auth = () => (made ??= make());

let made: ReturnType<typeof make> | undefined;

function make() {
  return betterAuth({
    appName: 'Faultwright',
    baseURL: env.FAULTWRIGHT_ORIGIN,
    secret: secret(),
    telemetry: { enabled: false },
    database: drizzleAdapter(database(), { provider: 'sqlite', schema, usePlural: true }),
    // Which passwords and PINs will do is said in lib/accounts/secret-rules.ts; a PIN is the shortest of them.
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PIN_LENGTH,
      maxPasswordLength: MAX_PASSWORD,
      revokeSessionsOnPasswordReset: true,
    },
    user: { additionalFields: { keeper: { type: 'boolean', input: false, defaultValue: false } } },
    session: { expiresIn: 14 * DAY_S, updateAge: DAY_S },
    // Its limits count requests to its own addresses. Ours count tries by name (slow-down.ts).
    rateLimit: { enabled: false },
    advanced: {
      cookiePrefix: 'faultwright',
      useSecureCookies: env.FAULTWRIGHT_ORIGIN.startsWith('https:'),
      defaultCookieAttributes: { sameSite: 'lax', httpOnly: true, path: '/' },
      ipAddress: { ipAddressHeaders: [ADDRESS_HEADER] },
    },
    plugins: [
      organization({
        allowUserToCreateOrganization: false,
        disableOrganizationDeletion: true,
        schema: { invitation: { additionalFields: { tokenHash: { type: 'string', input: false, required: true } } } },
      }),
      // Last, so that it sees the cookies of all others.
      nextCookies(),
    ],
  });
}
