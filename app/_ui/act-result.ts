/** What an action hands back to its form: a sentence that says what was wrong, or that it is done. */
export type ActResult = { error: string } | { done: true };
