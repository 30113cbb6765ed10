/** Every time zone that the machine knows by name, and one that is in use whatever it is called now. */
export function timeZones(inUse: string): string[] {
  return [...new Set(['UTC', inUse, ...Intl.supportedValuesOf('timeZone')])].sort();
}
