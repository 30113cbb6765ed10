import { getTranslations } from 'next-intl/server';
import { takesMail } from '@/lib/accounts/sign-in-name';
import { sendMail } from '../mail';

/** Mails a link where that can be done. It is shown to copy either way: a mail may not arrive. */
export async function sendLink(kind: 'invitation' | 'reset', address: string | null, link: string): Promise<void> {
  if (!address || !takesMail(address)) return;
  const t = await getTranslations('mail');
  await sendMail({ to: address, subject: t(`${kind}.subject`), text: t(`${kind}.text`, { link }) });
}
