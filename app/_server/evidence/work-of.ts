/** What the name of some work in the log stands for. */
export function workOf(work: string): { kind: string; id: string; place: string | undefined } {
  const [, kind = '', id = '', place] = /^(attempt|observation|sitting) (.+?)(?: (\d+))?$/.exec(work) ?? [];
  return { kind, id, place };
}
