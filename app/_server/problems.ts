import { getTranslations } from 'next-intl/server';
import messages from '@/content/messages/en.json';
import { areas } from '@/lib/areas';
import { conditionIds } from '@/lib/rig/condition';
import { catalogue } from './catalogue';

export type ProblemCode = keyof typeof messages.problems;
type Values = Record<string, string | number | readonly string[]>;

/** Longest piece of somebody's input that is quoted back. */
const QUOTED = 60;

/** A sentence that says what was wrong, naming things as the reader knows them. */
export async function problem(code: ProblemCode, values: object = {}): Promise<string> {
  const t = await getTranslations('problems');
  return t(code, await readable(values as Values));
}

/** A sentence that names the fields of a form that are missing or not usable. */
export async function problemWithFields(fields: readonly string[], code: ProblemCode = 'incomplete'): Promise<string> {
  const t = await getTranslations('fields');
  const names = fields.map((field) => (isField(field) ? t(field) : field));
  return problem(code, { fields: names });
}

function isField(name: string): name is keyof typeof messages.fields {
  return name in messages.fields;
}

async function readable(values: Values): Promise<Record<string, string | number>> {
  const entries = Object.entries(values).map(async ([name, value]) => {
    if (typeof value === 'number') return [name, value] as const;
    const parts = typeof value === 'string' ? [value] : value;
    return [name, (await Promise.all(parts.map((part) => nameOf(name, part)))).join(', ')] as const;
  });
  return Object.fromEntries(await Promise.all(entries));
}

async function nameOf(kind: string, id: string): Promise<string> {
  if (kind === 'check') return catalogue().checks.get(id)?.text.en.name ?? quoted(id);
  if (kind === 'instrument') return catalogue().gauges.get(id)?.text.en.name ?? quoted(id);
  if (kind === 'condition') {
    const condition = conditionIds.find((known) => known === id);
    return condition ? (await getTranslations('conditions'))(condition) : quoted(id);
  }
  const area = areas.find((known) => known === id);
  return kind === 'areas' && area ? (await getTranslations('areas'))(area) : quoted(id);
}

function quoted(text: string): string {
  return text.length > QUOTED ? `${text.slice(0, QUOTED)}…` : text;
}
