import { z } from 'zod';

const share = z.number().min(0).max(1);

export const makeUpSchema = z.strictObject({
  /** How often the best next check is made, rather than another that would tell something. */
  checks: share,
  /** How often a reading is judged right. */
  verdicts: share,
  /** How often a finding has the right reason. */
  reasons: share,
  /** How often the call is what the readings say. */
  call: share,
  /** How much of what has to be put right is. */
  care: share,
});

/** What somebody who learns the trade can do already. */
export type MakeUp = z.infer<typeof makeUpSchema>;

/** Share of what is still lacking that each attempt leaves lacking. Assumed. */
const STILL_LACKING = 0.93;

/** What a make-up has become after some attempts. */
export function grown(makeUp: MakeUp, attempts: number): MakeUp {
  const grow = (share: number) => share + (1 - share) * (1 - STILL_LACKING ** attempts);
  const { checks, verdicts, reasons, call, care } = makeUp;
  return {
    checks: grow(checks),
    verdicts: grow(verdicts),
    reasons: grow(reasons),
    call: grow(call),
    care: grow(care),
  };
}
