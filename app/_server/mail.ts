import { createTransport, type Transporter } from 'nodemailer';
import { env } from './env';
import { log } from './log';

export interface Mail {
  to: string;
  subject: string;
  text: string;
}

let transport: Transporter | undefined;

/** Whether the installation can send mail at all. */
export function canSendMail(): boolean {
  return env.FAULTWRIGHT_SMTP !== null;
}

/** Sends a mail. False where none can be sent, or where the server did not take it: then the link is shown to copy. */
export async function sendMail(mail: Mail): Promise<boolean> {
  if (env.FAULTWRIGHT_SMTP === null || env.FAULTWRIGHT_MAIL_FROM === null) return false;
  try {
    transport ??= createTransport(env.FAULTWRIGHT_SMTP);
    await transport.sendMail({ ...mail, from: env.FAULTWRIGHT_MAIL_FROM });
    return true;
  } catch (error) {
    log.error({ code: (error as { code?: unknown }).code }, 'The mail server did not take a mail');
    return false;
  }
}
