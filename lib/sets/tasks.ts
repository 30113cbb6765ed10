import type { SetBody, SetItem } from './set-body';

/** One thing to do in a set: a case, or a question. */
export interface Task {
  /** From 1, through the whole set. */
  place: number;
  item: SetItem;
  /** From 1, within its item. */
  nth: number;
}

/** What a set asks for, task by task. */
export function tasksOf({ items }: Pick<SetBody, 'items'>): Task[] {
  return items
    .flatMap((item) =>
      Array.from({ length: 'count' in item ? item.count : 1 }, (_, index) => ({ item, nth: index + 1 })),
    )
    .map((task, index) => ({ place: index + 1, ...task }));
}

/** Whether a task is a case; otherwise it is a question. */
export function isCase({ item }: Pick<Task, 'item'>): boolean {
  return item.kind === 'case' || item.kind === 'cases';
}
