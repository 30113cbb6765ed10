import { auth } from './auth';

/** The form in which a password or PIN is kept. Takes some hundred milliseconds on purpose. */
export async function hashSecret(secret: string): Promise<string> {
  const { password } = await auth().$context;
  return password.hash(secret);
}
