/** What somebody signed in with, as far as the browser says so. */
export interface Device {
  browser: string;
  system: string;
}

/** The first that fits counts: most browsers name those before them too. */
const browsers = [
  ['Edge', /\bEdg(?:e|A|iOS)?\//],
  ['Opera', /\bOPR\//],
  ['Samsung Internet', /\bSamsungBrowser\//],
  ['Firefox', /\b(?:Firefox|FxiOS)\//],
  ['Chrome', /\b(?:Chrome|CriOS)\//],
  ['Safari', /\bSafari\//],
] as const;

const systems = [
  ['iPad', /\biPad\b/],
  ['iPhone', /\biPhone\b/],
  ['Android', /\bAndroid\b/],
  ['ChromeOS', /\bCrOS\b/],
  ['Windows', /\bWindows\b/],
  ['Mac', /\bMac(?:intosh| OS X)\b/],
  ['Linux', /\bLinux\b/],
] as const;

/** Browser and system out of what a browser calls itself; undefined where it does not name both. */
export function deviceFrom(userAgent: string | null): Device | undefined {
  const browser = firstIn(browsers, userAgent ?? '');
  const system = firstIn(systems, userAgent ?? '');
  return browser && system ? { browser, system } : undefined;
}

function firstIn(known: readonly (readonly [string, RegExp])[], userAgent: string): string | undefined {
  return known.find(([, sign]) => sign.test(userAgent))?.[0];
}
