import type { APIRequestContext, APIResponse } from '@playwright/test';
import { expect } from './fixtures';

/** An id that nothing has. */
export const MISSING = '00000000000000000000';

/** As often as the two addresses are asked for, at most. */
const ROUNDS = 12;

/**
 * What is somebody else’s is answered as what does not exist: not found, in the same words. Which part of a page is
 * written first may differ from one answer to the next, so both are asked for again until they have said the same: what
 * came from whose it is would differ in every answer.
 *
 * @param address  the address of what has an id.
 */
export async function expectNotThere(
  request: APIRequestContext,
  theirs: string,
  address: (id: string) => string,
): Promise<void> {
  const said = { theirs: new Set<string>(), missing: new Set<string>() };
  for (let round = 1; ; round++) {
    const [ofTheirs, ofMissing] = await Promise.all(
      [theirs, MISSING].map(async (id) => {
        const answer = await request.get(address(id));
        expect(answer.status(), address(id)).toBe(404);
        return textWithoutNonce(answer, id);
      }),
    );
    said.theirs.add(ofTheirs ?? '');
    said.missing.add(ofMissing ?? '');
    if ([...said.theirs].some((text) => said.missing.has(text))) return;
    if (round === ROUNDS) expect(ofTheirs).toEqual(ofMissing);
  }
}

/** What an answer says, but for what is drawn anew for every answer, and for the id that was asked for. */
async function textWithoutNonce(answer: APIResponse, id: string): Promise<string> {
  const [, nonce = 'NONCE'] = /'nonce-([\w-]+)'/.exec(answer.headers()['content-security-policy'] ?? '') ?? [];
  return (await answer.text()).replaceAll(nonce, 'NONCE').replaceAll(id, 'ID');
}
