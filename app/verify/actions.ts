'use server';

import { getTranslations } from 'next-intl/server';
import { z } from 'zod';
import { type CertificateView, certificateView } from '@/app/_server/certificates/certificate-view';
import { type CheckedText, checkText, isShowing } from '@/app/_server/certificates/check-text';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { isNamed } from '@/lib/certificates/hashed-name';
import { MOST_CHARACTERS } from '@/lib/certificates/jws';

const short = z.string().trim().max(120).default('');
const fields = z.object({
  text: z.string().default(''),
  file: z.unknown(),
  audience: short,
  nonce: short,
  name: short,
});

export type CheckResult = { error: string } | { view: CertificateView };

/** Checks a certificate, or a showing of one, that somebody was handed. */
export const checkCertificate = action('checkCertificate', async (_, form): Promise<CheckResult> => {
  const parsed = fields.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('certificate-none') };
  const { audience, nonce, name } = parsed.data;
  const text = await textIn(parsed.data);
  if (text === '') return { error: await problem('certificate-none') };
  if (text === undefined) return { error: await problem('certificate-long', { most: MOST_CHARACTERS }) };
  if (isShowing(text) && (!audience || !nonce)) return { error: await problem('certificate-asked') };
  const checked = await checkText(text, { audience, nonce }, new Date());
  const { verification, record } = checked;
  const view = await certificateView(record, verification.ok ? null : verification.refusal);
  return { view: { ...view, named: name ? await comparedWith(name, checked) : null } };
});

/** A file that is chosen counts for more than what is typed; undefined for more than any certificate is. */
async function textIn({ text, file }: z.infer<typeof fields>): Promise<string | undefined> {
  const chosen = file instanceof Blob && file.size > 0 ? file : new Blob([text]);
  return chosen.size > MOST_CHARACTERS ? undefined : (await chosen.text()).trim();
}

async function comparedWith(name: string, { verification }: CheckedText): Promise<string | null> {
  if (!('certificate' in verification) || !verification.certificate) return null;
  const t = await getTranslations('verify.named');
  const hashed = verification.certificate.holder.name;
  if (!hashed) return t('none');
  return (await isNamed(hashed, name)) ? t('same', { name }) : t('other', { name });
}
