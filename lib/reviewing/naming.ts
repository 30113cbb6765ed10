/** What names wait for at an assignment that is marked without them. */
export interface Unsettled {
  /** When nothing is taken any more, milliseconds since 1970. */
  endsAt: number;
  /** Answers at it that a first or a second person has still to mark. */
  unmarked: number;
}

/**
 * Whether names may stand beside the work of an assignment. Where marking is anonymous, only once nothing is taken any more and
 * everything that a person has to mark is marked: until then a name could sway a mark.
 */
export function showsNames(anonymous: boolean, { endsAt, unmarked }: Unsettled, now: number): boolean {
  return !anonymous || (now >= endsAt && unmarked === 0);
}
