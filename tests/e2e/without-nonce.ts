import type { APIResponse } from '@playwright/test';

/** What an answer says, but for what is drawn anew for every answer, and for the id that was asked for. */
export async function textWithoutNonce(answer: APIResponse, id: string): Promise<string> {
  const [, nonce = 'NONCE'] = /'nonce-([\w-]+)'/.exec(answer.headers()['content-security-policy'] ?? '') ?? [];
  return (await answer.text()).replaceAll(nonce, 'NONCE').replaceAll(id, 'ID');
}
