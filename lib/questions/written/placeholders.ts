/** Stands for the key in an explanation. */
export const ANSWER = 'answer';

const PLACEHOLDER = /\{([a-z][a-z0-9_]*)\}/gi;

/** Names that stand in braces in a text, each once. */
export function namesIn(text: string): string[] {
  return [...new Set([...text.matchAll(PLACEHOLDER)].map(([, name = '']) => name))];
}

/** The text with what each name in braces stands for; a name that stands for nothing stays as it is. */
export function filled(text: string, values: Readonly<Record<string, string>>): string {
  return text.replace(PLACEHOLDER, (whole, name: string) =>
    Object.hasOwn(values, name) ? (values[name] ?? '') : whole,
  );
}
