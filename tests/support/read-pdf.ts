import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A node of a PDF's structure that something is written or drawn under, with the text below it. One that goes on comes once a page. */
export interface Told {
  role: string;
  text: string;
  alt?: string;
  children: Told[];
}

export interface ReadPdf {
  pages: number;
  title: string;
  language: string | null;
  isTagged: boolean;
  /** Everything that is written, in the order in which it is told. */
  text: string;
  /** What stands under no structure: decoration and feet. */
  untold: string;
  told: Told[];
}

interface Node {
  role?: string;
  type?: string;
  id?: string;
  alt?: string;
  children?: Node[];
}

/** Reads a PDF as somebody does who does not see it, by another library than the one that writes it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const [{ info }, mark] = [await pdf.getMetadata(), await pdf.getMarkInfo()];
  const told: Told[] = [];
  let untold = '';
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const { texts, outside } = textsOf((await page.getTextContent({ includeMarkedContent: true })).items as Item[]);
    untold += outside;
    const tree = (await page.getStructTree()) as Node | null;
    told.push(...(tree?.children ?? []).map((child) => toldOf(child, texts)).filter(isThere));
  }
  await pdf.destroy();
  const { Title, Language } = info as { Title: string; Language: string | null };
  const text = told.map((one) => one.text).join('\n');
  return { pages: pdf.numPages, title: Title, language: Language, isTagged: mark?.Marked === true, text, untold, told };
}

/** All nodes of a role, wherever they are. */
export function withRole(told: readonly Told[], role: string): Told[] {
  return told.flatMap((one) => [...(one.role === role ? [one] : []), ...withRole(one.children, role)]);
}

interface Item {
  type?: string;
  id?: string;
  str?: string;
  hasEOL?: boolean;
}

function textsOf(items: readonly Item[]): { texts: Map<string, string>; outside: string } {
  const texts = new Map<string, string>();
  const open: (string | undefined)[] = [];
  let outside = '';
  for (const { type, id, str = '', hasEOL } of items) {
    if (type?.startsWith('beginMarkedContent')) open.push(id);
    else if (type === 'endMarkedContent') open.pop();
    else {
      const [within, text] = [open.findLast((one) => one), hasEOL ? `${str} ` : str];
      if (!within) outside += `${text}\n`;
      else texts.set(within, (texts.get(within) ?? '') + text);
    }
  }
  return { texts, outside };
}

function toldOf(node: Node, texts: ReadonlyMap<string, string>): Told {
  const below = (node.children ?? [])
    .filter(({ role }) => role)
    .map((child) => toldOf(child, texts))
    .filter(isThere);
  const own = (node.children ?? []).flatMap(({ type, id }) => (type === 'content' && id ? [texts.get(id) ?? ''] : []));
  const text = [...own, ...below.map((one) => one.text)].filter((one) => one !== '').join('\n');
  return { role: node.role ?? '', text, ...(node.alt && { alt: node.alt }), children: below };
}

/** A page's tree names what stands on other pages too. */
function isThere({ text, alt }: Told): boolean {
  return text !== '' || alt !== undefined;
}
