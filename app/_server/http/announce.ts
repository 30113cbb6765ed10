import { newSetUpToken } from '../set-up-token';

/** Says on the console how a new installation is set up. Not in the log, which others may read later. */
export async function announce(origin: string): Promise<void> {
  const token = await newSetUpToken();
  if (!token) return;
  process.stdout.write(
    `\nNobody has an account here yet. Set up the first organisation at\n\n    ${origin}/set-up\n\n`,
  );
  process.stdout.write(`with this token, which is good until the server stops:\n\n    ${token}\n\n`);
}
