import { z } from 'zod';
import type { Certificate } from './certificate';
import { inSeconds, momentWritten } from './moments';

/** A certificate as it was handed over, with when it says that it was signed. */
export interface ReadCertificate {
  certificate: Certificate;
  /** Milliseconds since 1970, UTC. */
  signedAt: number;
}

/** Either what a credential says, or the place of the first thing in it that is not as it must be. */
export type CredentialRead = { ok: true; read: ReadCertificate } | { ok: false; at: string };

const seconds = z.int().min(0);
const address = z.url();
const moment = z.string().transform((text, context) => {
  const at = momentWritten(text);
  if (at === undefined) context.addIssue({ code: 'custom', message: 'must be a moment with its zone' });
  return at ?? 0;
});
const number = z
  .string()
  .refine((text) => text !== '' && Number.isFinite(Number(text)))
  .transform(Number);

const typed = (type: string) => z.array(z.string()).refine((types) => types.includes(type));

const descriptionSchema = z.object({
  id: z.string(),
  type: typed('ResultDescription'),
  name: z.string(),
  requiredValue: number,
  valueMin: number,
  valueMax: number,
});

const achievementSchema = z.object({
  id: address,
  type: typed('Achievement'),
  name: z.string().min(1),
  version: z.string().min(1),
  description: z.string().min(1),
  criteria: z.object({ narrative: z.string().min(1) }),
  alignment: z
    .array(
      z.object({
        targetName: z.string(),
        targetDescription: z.string(),
        targetFramework: z.string(),
        targetCode: z.string(),
        targetUrl: address,
      }),
    )
    .default([]),
  resultDescription: z.array(descriptionSchema).default([]),
});

const identitySchema = z.object({
  type: z.literal('IdentityObject'),
  hashed: z.literal(true),
  identityHash: z.string().regex(/^sha256\$[0-9a-f]{64}$/i),
  identityType: z.literal('name'),
  salt: z.string().min(1),
});

const subjectSchema = z.object({
  id: z.string().min(1),
  type: typed('AchievementSubject'),
  identifier: z.array(identitySchema).max(1).default([]),
  achievement: achievementSchema,
  result: z.array(z.object({ type: typed('Result'), resultDescription: z.string(), value: number })).default([]),
});

const statusSchema = z.object({
  type: z.literal('BitstringStatusListEntry'),
  statusPurpose: z.literal('suspension'),
  statusListIndex: z
    .string()
    .regex(/^(0|[1-9]\d{0,8})$/)
    .transform(Number),
  statusListCredential: address,
  statusReference: address,
});

const credentialSchema = z.object({
  '@context': z.array(z.string()).refine(([first]) => first === 'https://www.w3.org/ns/credentials/v2'),
  id: address,
  type: typed('VerifiableCredential').refine((types) => types.includes('OpenBadgeCredential')),
  issuer: z.object({ id: address, type: typed('Profile'), name: z.string().min(1) }),
  validFrom: moment,
  validUntil: moment,
  credentialSubject: subjectSchema,
  credentialStatus: statusSchema,
  iss: z.string(),
  jti: z.string(),
  sub: z.string(),
  nbf: seconds,
  exp: seconds,
  iat: seconds,
});

type Credential = z.infer<typeof credentialSchema>;

/** Reads the payload of a signed certificate. The claims beside the credential have to say what it says. */
export function readCredential(payload: unknown): CredentialRead {
  const parsed = credentialSchema.safeParse(payload);
  if (!parsed.success) return { ok: false, at: (parsed.error.issues[0]?.path ?? []).join('.') };
  const at = contradiction(parsed.data) ?? unlinkedResult(parsed.data);
  if (at !== undefined) return { ok: false, at };
  return { ok: true, read: { certificate: certificateIn(parsed.data), signedAt: parsed.data.iat * 1000 } };
}

function contradiction(said: Credential): string | undefined {
  if (said.iss !== said.issuer.id) return 'iss';
  if (said.jti !== said.id) return 'jti';
  if (said.sub !== said.credentialSubject.id) return 'sub';
  if (said.nbf !== inSeconds(said.validFrom)) return 'nbf';
  if (said.exp !== inSeconds(said.validUntil)) return 'exp';
  return said.validFrom < said.validUntil ? undefined : 'validUntil';
}

function unlinkedResult({ credentialSubject: { achievement, result } }: Credential): string | undefined {
  const described = new Set(achievement.resultDescription.map(({ id }) => id));
  const stray = result.findIndex(({ resultDescription }) => !described.has(resultDescription));
  return stray < 0 ? undefined : `credentialSubject.result.${stray}.resultDescription`;
}

function certificateIn(said: Credential): Certificate {
  const { credentialSubject: subject, credentialStatus: status } = said;
  const { achievement, identifier } = subject;
  return {
    id: said.id,
    issuer: { id: said.issuer.id, name: said.issuer.name },
    holder: {
      id: subject.id,
      name: identifier[0] ? { hash: identifier[0].identityHash, salt: identifier[0].salt } : null,
    },
    scheme: schemeIn(achievement),
    validFrom: said.validFrom,
    validUntil: said.validUntil,
    results: resultsIn(subject),
    status: {
      index: status.statusListIndex,
      suspensions: status.statusListCredential,
      revocations: status.statusReference,
    },
  };
}

function schemeIn({
  id,
  name,
  version,
  description,
  criteria,
  alignment,
}: Credential['credentialSubject']['achievement']) {
  const alignments = alignment.map(({ targetName, targetDescription, targetFramework, targetCode, targetUrl }) => ({
    name: targetName,
    about: targetDescription,
    framework: targetFramework,
    code: targetCode,
    url: targetUrl,
  }));
  return { id, name, version, claim: description, criteria: criteria.narrative, alignments };
}

function resultsIn({ achievement, result }: Credential['credentialSubject']): Certificate['results'] {
  const values = new Map(result.map(({ resultDescription, value }) => [resultDescription, value]));
  return achievement.resultDescription.flatMap(({ id, name, requiredValue, valueMin, valueMax }) => {
    const value = values.get(id);
    const topic = id.slice(achievement.id.length + 1);
    return value === undefined ? [] : [{ id: topic, name, value, cut: requiredValue, min: valueMin, max: valueMax }];
  });
}
