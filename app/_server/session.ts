export interface Learner {
  id: string;
}

/** Who is asking. There are no accounts yet: everyone at this installation is the one local learner. */
export async function requireLearner(): Promise<Learner> {
  return { id: 'local' };
}
