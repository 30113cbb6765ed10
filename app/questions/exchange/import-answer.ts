/** A question of a file, in words. */
export interface ShownRow {
  /** Where it stands: a file of the package, a line. */
  place: string;
  title: string;
  /** What it is taken as; none where it is not. */
  takenAs?: string;
  /** Why not, or what was left out or assumed. */
  says: readonly string[];
}

/** What a file came to, or that its questions are kept. */
export type ImportAnswer =
  | { error: string }
  | { summary: string; rows: readonly ShownRow[]; good: number; submit: string | null }
  | { imported: string };
