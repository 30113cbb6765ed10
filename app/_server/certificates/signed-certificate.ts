import { createHmac } from 'node:crypto';
import type { CertificateRow } from '@/db/queries/certificates';
import type { Certificate, CertifiedResult } from '@/lib/certificates/certificate';
import { hashedName } from '@/lib/certificates/hashed-name';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { catalogue } from '../catalogue';
import { secret } from '../secret';
import { certificateAddress, holderAddress, issuerAddress, schemeAddress, statusAddress } from './addresses';
import type { Signer } from './issuer-keys';

/** What a certificate is made of; what is signed of it, its holder decides. */
export type CertificateFacts = Pick<
  CertificateRow,
  'id' | 'organizationId' | 'learnerId' | 'scheme' | 'standing' | 'statusIndex' | 'consent' | 'issuedAt' | 'expiresAt'
> & { holderName: string; organizationName: string };

/** The scale that abilities are shown on, logits. */
const SCALE = { min: -4, max: 4 } as const;

/** Signs a certificate with no more in it than its holder agreed to. */
export async function signedCertificate(facts: CertificateFacts, signer: Signer, now: Date): Promise<string> {
  return signCertificate(await certificateOf(facts), signer, now.getTime());
}

async function certificateOf(facts: CertificateFacts): Promise<Certificate> {
  const { id, organizationId, learnerId, scheme, consent, statusIndex } = facts;
  const { name, claim, notFor, criteria } = scheme.text.en;
  return {
    id: certificateAddress(id),
    issuer: { id: issuerAddress(organizationId), name: facts.organizationName },
    holder: {
      id: holderAddress(organizationId, learnerId),
      name: consent.name ? await hashedName(facts.holderName, saltOf(id)) : null,
    },
    scheme: {
      id: schemeAddress(organizationId, scheme),
      name,
      version: String(scheme.version),
      claim: `${claim} ${notFor}`,
      criteria,
      alignments: scheme.blueprint.flatMap(({ topic }) => alignmentOf(topic)),
    },
    validFrom: Math.floor(facts.issuedAt.getTime() / 1000) * 1000,
    validUntil: facts.expiresAt.getTime(),
    results: consent.results ? resultsOf(facts.standing) : [],
    status: {
      index: statusIndex,
      suspensions: statusAddress(organizationId, 'suspension'),
      revocations: statusAddress(organizationId, 'revocation'),
    },
  };
}

/** A topic by the name that never changes, with the public standards that it corresponds to. */
function alignmentOf(topicId: string): Certificate['scheme']['alignments'] {
  const topic = catalogue().topics.get(topicId);
  if (!topic) return [];
  const about = topic.correspondsTo.map(({ framework, code, title }) => `${framework} ${code}: ${title}`).join('; ');
  const { uuid, text } = topic;
  return [{ name: text.en.name, about, framework: 'Topics of Faultwright', code: uuid, url: `urn:uuid:${uuid}` }];
}

/** How a certificate's topics were shown, on the scale, to a hundredth. Those below the line are left out where it is written. */
export function resultsOf({ topics }: CertificateRow['standing']): CertifiedResult[] {
  return topics.map(({ topic, mean, cut }) => ({
    id: topic,
    name: catalogue().topics.get(topic)?.text.en.name ?? topic,
    value: Math.round(mean * 100) / 100,
    cut,
    ...SCALE,
  }));
}

/** The same for a certificate each time it is signed, so that two copies do not look like two people. */
function saltOf(id: string): string {
  return createHmac('sha256', secret()).update(`salt of certificate\0${id}`).digest('base64url').slice(0, 22);
}
