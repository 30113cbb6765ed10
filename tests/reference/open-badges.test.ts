import { readFileSync } from 'node:fs';
import { Ajv2019 } from 'ajv/dist/2019.js';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import type { Certificate } from '@/lib/certificates/certificate';
import { credentialOf } from '@/lib/certificates/credential';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { aCertificate, aKey, ISSUED } from '../support/certificates';
import { badgeSchema } from './open-badges/badge-schema';

/**
 * Certificates against the schema of the standard.
 *
 * @source 1EdTech Open Badges 3.0; see open-badges/README.md.
 */
const official = process.env.FAULTWRIGHT_BADGE_SCHEMA;
const schemas: [string, object][] = [['as written down', badgeSchema]];
if (official) schemas.push(['official', JSON.parse(readFileSync(official, 'utf8'))]);

function validator(schema: object) {
  const { $schema, ...rules } = schema as Record<string, unknown>;
  const ajv = new Ajv2019({ strict: false, allErrors: true });
  addFormats.default(ajv);
  return ajv.compile(rules);
}

type Json = Record<string, unknown>;

/** Each fault of the standard's own bad examples, in a certificate of ours. */
const faults: [string, (badge: Json, subject: Json, achievement: Json) => void][] = [
  ['context', (badge) => set(badge, '@context', ['https://www.w3.org/2018/credentials/v1', 'https://example.org'])],
  ['type', (badge) => set(badge, 'type', ['VerifiableCredential', 'OtherCredential'])],
  ['not verifiable', (badge) => set(badge, 'type', ['OpenBadgeCredential'])],
  ['issuer', (badge) => drop(badge, 'issuer')],
  ['issuer-type', (badge) => set(badge, 'issuer', { id: 'https://example.org', type: ['Organization'] })],
  ['issuer-otheridentifier-type', (badge) => extend(badge, 'issuer', { otherIdentifier: [{ type: 'Identifier' }] })],
  ['issuer-parentorg-type', (badge) => extend(badge, 'issuer', { parentOrg: { id: 'https://x.org', type: ['Org'] } })],
  ['evidence-type', (badge) => set(badge, 'evidence', [{ type: ['Proof'] }])],
  ['subject-type', (_, subject) => set(subject, 'type', ['Subject'])],
  ['subject-identifier-type', (_, subject) => set(subject, 'identifier', [{ type: 'Identity' }])],
  ['subject-result-type', (_, subject) => set(subject, 'result', [{ type: ['Outcome'] }])],
  ['subject-profile-type', (_, subject) => set(subject, 'source', { id: 'https://x.org', type: ['Person'] })],
  [
    'result-description-type',
    (_, __, achievement) => set(achievement, 'resultDescription', [{ id: 'urn:x', type: ['R'], name: 'x' }]),
  ],
  ['no criteria', (_, __, achievement) => drop(achievement, 'criteria')],
  ['validFrom', (badge) => set(badge, 'validFrom', '2026-03-02')],
  ['several statuses', (badge) => set(badge, 'credentialStatus', [badge.credentialStatus, badge.credentialStatus])],
];

describe.each(schemas)('against the schema %s', (_, schema) => {
  const valid = validator(schema);

  test.each<[string, Partial<Certificate>]>([
    ['whole', {}],
    ['without a name', { holder: { id: 'urn:uuid:0f2a5f6c-8a53-4a6b-9d37-1f8a4b2c6d90', name: null } }],
    ['without results', { results: [] }],
  ])('a certificate %s is a valid badge, and so is what is signed', async (__, changes) => {
    const certificate = await aCertificate(changes);
    expect(valid(credentialOf(certificate)), JSON.stringify(valid.errors)).toBe(true);
    const [, payload = ''] = (await signCertificate(certificate, (await aKey()).signs, ISSUED)).split('.');
    expect(valid(JSON.parse(Buffer.from(payload, 'base64url').toString())), JSON.stringify(valid.errors)).toBe(true);
  });

  test.each(faults)('a badge with the fault "%s" is not valid', async (__, spoil) => {
    const badge = structuredClone(credentialOf(await aCertificate())) as unknown as Json;
    const subject = badge.credentialSubject as Json;
    spoil(badge, subject, subject.achievement as Json);
    expect(valid(badge)).toBe(false);
  });
});

function set(into: Json, name: string, value: unknown): void {
  into[name] = value;
}

function extend(into: Json, name: string, more: Json): void {
  into[name] = { ...(into[name] as Json), ...more };
}

function drop(from: Json, name: string): void {
  delete from[name];
}
