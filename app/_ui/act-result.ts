/**
 * What an action hands back to its form: a sentence that says what was wrong, or that it is done. `toCopy` is shown this
 * once, to be handed on: a link, a PIN.
 */
export type ActResult = { error: string } | { done: true; toCopy?: string };
