import { randomBytes } from 'node:crypto';
import { applications, evidence, issuerKeys } from '@/db/schema';
import { thumbprint } from '@/lib/certificates/issuer-key';
import { aKey, DAY, type SigningKey } from '../support/certificates';
import { aScheme } from '../support/competency-rows';
import { shared } from './at-questions';
import type { Somebody } from './somebody-new';

const { text } = aScheme();

/** One topic, eight responses, as one of the ready role profiles says of safety. Its words do not name the topic. */
export const scheme = aScheme({
  profile: 'low-pressure-unsupervised',
  text: { en: { ...text.en, criteria: 'Twelve cases of the last weeks' } },
  blueprint: [{ topic: 'filtration', share: 1, atLeast: 8 }],
});

/** What somebody has shown of topics, the same cases on each, in assessed work of the last days. */
export async function addShown(
  { id, organizationId }: Somebody,
  { score = 4, topics = ['filtration'] }: { score?: number; topics?: readonly string[] } = {},
): Promise<void> {
  const rows = topics.flatMap((topic) =>
    Array.from({ length: 12 }, (_, index) => ({
      ...{ id: `${id}-${topic}-${index}`, learnerId: id, organizationId, topic, source: 'case' as const },
      ...{ work: `attempt ${id}-${index}`, revision: 1, counts: true, score, hints: 0, safetyEvents: 0 },
      ...{ model: { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5], spread: 0.5 } as const },
      ...{
        exposure: `case ${id}-${index}`,
        purpose: 'assessed' as const,
        at: new Date(Date.now() - (index + 1) * DAY),
      },
      ...{ versions: { content: 'a', generator: 1 }, detail: { findings: [], share: 1, because: 'finding' } },
      writtenAt: new Date(),
    })),
  );
  await shared().insert(evidence).values(rows);
}

/** An application that somebody granted. @returns its id. */
export async function addGranted({ id: learnerId, organizationId }: Somebody): Promise<string> {
  const id = randomBytes(10).toString('hex');
  const at = new Date();
  await shared()
    .insert(applications)
    .values({
      ...{ id, learnerId, organizationId, schemeId: scheme.id, scheme, state: 'granted', appliedAt: at },
      ...{ decidedBy: 'somebody-else', decidedAt: at, reason: 'Shown' },
    });
  return id;
}

/** A key of an organisation that the test has as well, made long ago and retired since. */
export async function addOldKey(organizationId: string, origin: string): Promise<SigningKey> {
  const key = await aKey();
  const kid = await thumbprint(key.key.jwk);
  await shared()
    .insert(issuerKeys)
    .values({
      ...{ kid, organizationId, publicJwk: { ...key.key.jwk }, sealedPrivate: '', createdBy: 'somebody' },
      ...{ createdAt: new Date(Date.UTC(2020, 0, 1)), retiredAt: new Date(Date.now() - DAY) },
    });
  const id = `${origin}/issuers/${organizationId}/keys/${kid}`;
  return { ...key, signs: { id, jwk: key.jwk } };
}
