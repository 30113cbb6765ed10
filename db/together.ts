import type { Db } from './client';

/** A statement that has not run yet. Queries whose names end in -ing (`addingLogEntry`) make them. */
export interface Statement {
  run(): { changes: number };
}

/** Runs statements in one transaction: all of them stand, or none. @throws what the one that failed threw. */
export async function together(db: Db, statements: readonly Statement[]): Promise<void> {
  db.transaction(
    () => {
      for (const statement of statements) statement.run();
    },
    { behavior: 'immediate' },
  );
}

/**
 * Runs a statement that claims something once, and the others only where it changed a row; all in one transaction.
 *
 * @returns whether it did.
 */
export async function claimThen(db: Db, claim: Statement, others: readonly Statement[]): Promise<boolean> {
  return db.transaction(
    () => {
      if (claim.run().changes === 0) return false;
      for (const statement of others) statement.run();
      return true;
    },
    { behavior: 'immediate' },
  );
}

/** A statement that is followed by others where it changed something. To be handed to one of those above. */
export function followedBy(first: Statement, others: readonly Statement[]): Statement {
  return {
    run: () => {
      const done = first.run();
      if (done.changes > 0) for (const statement of others) statement.run();
      return done;
    },
  };
}
