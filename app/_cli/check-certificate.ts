import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { Issuer } from '@/lib/certificates/issuer-key';
import { standingFromLists } from '@/lib/certificates/standing-from-lists';
import { readStatusList } from '@/lib/certificates/status-credential';
import type { StatusPurpose } from '@/lib/certificates/status-list';
import { type Verification, verifyCertificate } from '@/lib/certificates/verify-certificate';
import { readOptions, runCommand, UsageError } from './usage-error';

const USAGE =
  'npm run -s check-certificate -- --file FILE.jwt --keys KEYS.json --suspensions LIST.jwt --revocations LIST.jwt [--json]';

const keySetSchema = z.object({
  keys: z.array(z.object({ kty: z.literal('OKP'), crv: z.literal('Ed25519'), x: z.string(), kid: z.url() })).min(1),
});

/** Checks a certificate by what its issuer publishes, fetched beforehand: nobody need be asked. */
async function main(): Promise<string> {
  const given = readOptions({
    file: { type: 'string' },
    keys: { type: 'string' },
    suspensions: { type: 'string' },
    revocations: { type: 'string' },
    json: { type: 'boolean', default: false },
  });
  const { file, keys, suspensions, revocations, json } = given;
  if (!file || !keys || !suspensions || !revocations) throw new UsageError(`Nothing to do. ${USAGE}`);
  const [trusted, now] = [[issuerIn(textOf(keys), keys)], Date.now()];
  const read = (path: string, purpose: StatusPurpose, id: string) =>
    readStatusList(textOf(path).trim(), { id, purpose, trusted, now });
  const verification = await verifyCertificate(textOf(file), {
    trusted,
    now,
    standingOf: async ({ status }) => {
      const suspended = await read(suspensions, 'suspension', status.suspensions);
      const revoked = await read(revocations, 'revocation', status.revocations);
      if (!suspended || !revoked) throw new UsageError('A status list is not signed by the issuer, or is too old');
      return standingFromLists(status, { suspensions: suspended, revocations: revoked });
    },
  });
  return json ? JSON.stringify(verification, null, 2) : inWords(verification);
}

/** The issuer's id is what its keys' addresses begin with. When they were made and retired is not published. */
function issuerIn(text: string, path: string): Issuer {
  const parsed = keySetSchema.safeParse(jsonIn(text));
  if (!parsed.success) throw new UsageError(`${path} is no key set of an issuer`);
  const keys = parsed.data.keys.map(({ kid, kty, crv, x }) => ({
    ...{ id: kid, jwk: { kty, crv, x }, madeAt: 0, retiredAt: null, compromisedFrom: null },
  }));
  return { id: keys[0]?.id.replace(/\/keys\/[^/]*$/, '') ?? '', keys };
}

function inWords(verification: Verification): string {
  if (!verification.ok) return `refused: ${verification.refusal.code}`;
  const { scheme, validUntil } = verification.certificate;
  return `good: ${scheme.name}, version ${scheme.version}, until ${new Date(validUntil).toISOString().slice(0, 10)}`;
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new UsageError(`Cannot read ${path}: ${(error as NodeJS.ErrnoException).code}`);
  }
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

runCommand(main);
