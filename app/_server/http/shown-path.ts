/** Whatever follows one of these opens something. */
const BEFORE_SECRETS = ['invited', 'reset', 'set-up', 'join'];

const LONGEST = 200;

/** The path of an address as the log may show it: without its query, and without what opens something. */
export function shownPath(url: string): string {
  const path = url.split(/[?#]/, 1)[0] ?? '';
  // Told apart as the router does it, which decodes and takes either slash.
  const segments = decoded(path).split(/[/\\]/);
  const before = segments.findIndex((segment) => BEFORE_SECRETS.includes(segment.toLowerCase()));
  const hidden = before >= 0 && segments.slice(before + 1).some((segment) => segment !== '');
  return (hidden ? `${segments.slice(0, before + 1).join('/')}/…` : path).slice(0, LONGEST);
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
