/** The column that people are put in order by, `name` or one that has a value, and which way. */
export interface ColumnOrder {
  sort: string;
  down: boolean;
}

/** People by a column; of equals by name, and whoever has nothing in the column comes last either way. */
export function peopleByColumn<P extends { name: string }>(
  people: readonly P[],
  { sort, down }: ColumnOrder,
  inColumn: (person: P) => number | null,
): P[] {
  const byName = new Intl.Collator('en', { sensitivity: 'base', numeric: true });
  const way = down ? -1 : 1;
  if (sort === 'name') return [...people].sort((a, b) => way * byName.compare(a.name, b.name));
  const values = new Map(people.map((person) => [person, inColumn(person)]));
  return [...people].sort((a, b) => {
    const [one, other] = [values.get(a) ?? null, values.get(b) ?? null];
    if (one === other) return byName.compare(a.name, b.name);
    if (one === null || other === null) return one === null ? 1 : -1;
    return way * (one - other);
  });
}
