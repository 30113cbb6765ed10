/** A figure, or the code that says why the answers give none. Never NaN. */
export type Statistic<Why extends string> = { value: number; why?: undefined } | { value?: undefined; why: Why };

/** Below this many people a figure of these says little. Common practice, no source; reference page 1.2: 30 answers, ±1 logit. */
export const FEW_PEOPLE = 30;
