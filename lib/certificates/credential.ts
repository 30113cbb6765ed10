import { type Certificate, type CertifiedResult, type StatusPlace, worthShowing } from './certificate';
import { written } from './moments';

const CONTEXTS = [
  'https://www.w3.org/ns/credentials/v2',
  'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json',
  'https://purl.imsglobal.org/spec/ob/v3p0/extensions.json',
] as const;

const SCHEMA = 'https://purl.imsglobal.org/spec/ob/v3p0/schema/json/ob_v3p0_achievementcredential_schema.json';

/**
 * A certificate as an Open Badge.
 *
 * The schema of the standard has room for one status. It names the list of what is not to be accepted at present, so that
 * whoever looks no further turns away what was suspended and what was revoked alike; `statusReference` leads to the list that
 * tells the one from the other.
 *
 * @source 1EdTech Open Badges 3.0; W3C Verifiable Credentials Data Model 2.0; W3C Bitstring Status List 1.0, section 2.1.
 */
export function credentialOf(certificate: Certificate) {
  const { id, issuer, scheme, validFrom, validUntil, status } = certificate;
  return {
    '@context': CONTEXTS,
    id,
    type: ['VerifiableCredential', 'OpenBadgeCredential'],
    name: scheme.name,
    issuer: { id: issuer.id, type: ['Profile'], name: issuer.name, url: issuer.id },
    validFrom: written(validFrom),
    validUntil: written(validUntil),
    credentialSubject: subjectOf(certificate),
    credentialSchema: [{ id: SCHEMA, type: '1EdTechJsonSchemaValidator2019' }],
    credentialStatus: statusOf(status),
  };
}

function subjectOf({ holder, scheme, results }: Certificate) {
  const shown = worthShowing(results);
  return {
    id: holder.id,
    type: ['AchievementSubject'],
    ...(holder.name && { identifier: [identityOf(holder.name)] }),
    achievement: achievementOf(scheme, shown),
    ...(shown.length > 0 && { result: shown.map((result) => resultOf(scheme.id, result)) }),
  };
}

function identityOf({ hash, salt }: NonNullable<Certificate['holder']['name']>) {
  return { type: 'IdentityObject', hashed: true, identityHash: hash, identityType: 'name', salt };
}

function achievementOf(scheme: Certificate['scheme'], shown: readonly CertifiedResult[]) {
  const { id, name, version, claim, criteria, alignments } = scheme;
  return {
    id,
    type: ['Achievement'],
    achievementType: 'Certification',
    name,
    version,
    description: claim,
    criteria: { id, narrative: criteria },
    ...(alignments.length > 0 && { alignment: alignments.map(alignmentOf) }),
    ...(shown.length > 0 && { resultDescription: shown.map((result) => descriptionOf(id, result)) }),
  };
}

function alignmentOf({ name, about, framework, code, url }: Certificate['scheme']['alignments'][number]) {
  return {
    type: ['Alignment'],
    targetName: name,
    targetDescription: about,
    targetFramework: framework,
    targetCode: code,
    targetUrl: url,
  };
}

function descriptionOf(scheme: string, { id, name, cut, min, max }: CertifiedResult) {
  return {
    id: resultId(scheme, id),
    type: ['ResultDescription'],
    name,
    resultType: 'ScaledScore',
    requiredValue: String(cut),
    valueMin: String(min),
    valueMax: String(max),
  };
}

function resultOf(scheme: string, { id, value }: CertifiedResult) {
  return { type: ['Result'], resultDescription: resultId(scheme, id), value: String(value) };
}

function resultId(scheme: string, id: string): string {
  return `${scheme}#${id}`;
}

function statusOf({ index, suspensions, revocations }: StatusPlace) {
  return {
    id: `${suspensions}#${index}`,
    type: 'BitstringStatusListEntry',
    statusPurpose: 'suspension',
    statusListIndex: String(index),
    statusListCredential: suspensions,
    statusReference: revocations,
  };
}
