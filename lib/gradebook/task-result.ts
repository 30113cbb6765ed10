/** What became of one task of a turn, after every change of marks that counts. */
export interface TaskResult {
  /** Of the set's tasks, from 1. */
  place: number;
  kind: 'case' | 'question';
  /** 0…1 of what the task is worth; null while a person has to mark it. What was not done earns 0. */
  share: number | null;
  /** 0…1 as it was computed, before anybody changed it; null where only a person can tell. */
  computed: number | null;
  /** From when it was begun until it was called or answered; null where it was not. */
  seconds: number | null;
  /** What was named: a cause, an option; several of them behind one another; null where nothing was. */
  chose: readonly string[] | null;
  /** Whether that was right; null where there is more than right and wrong. */
  right: boolean | null;
  /** Designed, logits; null where the task was not met. */
  difficulty: number | null;
  /** It counts for nobody. */
  withdrawn: boolean;
}
