import type { TaskModel } from '../competency/task-model';

/** Something that a panel judges: a case or a question, as it stood when the panel began. */
export interface PanelTask {
  /** Of the pool. */
  poolTaskId: string;
  kind: 'case' | 'question';
  topic: string;
  model: TaskModel;
  /** Highest score. */
  outOf: number;
}
