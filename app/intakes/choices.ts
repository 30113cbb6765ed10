/** Shares of the minutes that may be given on top. */
export const extraTimes = [0, 0.25, 0.5, 1] as const;

/** Days that a link may lead somewhere. */
export const linkDays = [1, 3, 7, 14] as const;
