import { type APIRequestContext, expect, type Page } from '@playwright/test';

/** A response as one text. Only what the clock writes and what names this one answer is left out. */
export async function whole(
  request: APIRequestContext,
  path: string,
  headers: Record<string, string> = {},
): Promise<string> {
  const answer = await request.get(path, { headers });
  const { date, 'x-request-id': _, ...rest } = answer.headers();
  const nonce = /'nonce-([\w-]+)'/.exec(rest['content-security-policy'] ?? '')?.[1] ?? '';
  return `${JSON.stringify(rest)}\n${await answer.text()}`.replaceAll(nonce, 'NONCE');
}

/** Addresses as documents and as the payloads that the router fetches, with their headers. */
export async function wholeBothWays(request: APIRequestContext, paths: readonly string[]): Promise<string[]> {
  const answers = [];
  for (const path of paths) for (const headers of [{}, { RSC: '1' }]) answers.push(await whole(request, path, headers));
  return answers;
}

/** Hands every response on to the browser and keeps its text. */
export async function listen(page: Page): Promise<string[]> {
  const heard: string[] = [];
  await page.route('**/*', async (route) => {
    const answer = await route.fetch({ maxRedirects: 0 });
    const body = await answer.body();
    heard.push(`${route.request().method()} ${JSON.stringify(answer.headers())}\n${body.toString('utf8')}`);
    await route.fulfill({ response: answer, body });
  });
  return heard;
}

/** What the framework draws anew for every request, whoever asks and whatever for: 21 random symbols and a letter. */
export const REQUEST_ID = /[\w-]{21}[vm](?=\\?")/g;

/** As often as two sides are asked, at most. */
const ROUNDS = 12;

/**
 * Each of two sides gives the same answers, place by place. Which part of a page is written first may differ from one answer
 * to the next, so they are asked again until each place has given both the same: what came from what must not be told would
 * differ in every answer.
 *
 * @param ask  the answers of a side, with its own ids taken out.
 * @returns the answers of the last round.
 */
export async function expectAlike(ask: (side: 0 | 1) => Promise<string[]>): Promise<[string[], string[]]> {
  const heard = [new Map<number, Set<string>>(), new Map<number, Set<string>>()] as const;
  for (let round = 1; ; round++) {
    const told: [string[], string[]] = [[], []];
    for (const side of [0, 1] as const) {
      told[side] = (await ask(side)).map((answer) => answer.replaceAll(REQUEST_ID, 'REQUEST'));
      for (const [at, answer] of told[side].entries())
        heard[side].set(at, (heard[side].get(at) ?? new Set()).add(answer));
    }
    const unlike = [...heard[0]].filter(([at, said]) => ![...said].some((answer) => heard[1].get(at)?.has(answer)));
    if (unlike.length === 0 && told[0].length === told[1].length) return told;
    if (round === ROUNDS) expect(differences(told[0], told[1])).toEqual([]);
  }
}

/** Around the first place at which each pair of texts differs. */
function differences(texts: readonly string[], others: readonly string[]): string[] {
  return texts.flatMap((text, i) => {
    const other = others[i];
    if (other === undefined || text === other) return [];
    const at = [...text].findIndex((symbol, place) => symbol !== other[place]);
    return [`${text.slice(at - 40, at + 60)} | ${other.slice(at - 40, at + 60)}`];
  });
}
