/** The words with what stands for a name in braces. */
export function withValues(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}
