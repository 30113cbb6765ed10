import ui from '../ui.module.css';

/** What stands above a grid of people: by which name, class and state to look, and in which order. */

export function NameSearch({
  label,
  value,
  onChange,
}: {
  label: string;
  value: string;
  onChange: (value: string) => void;
}) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <input type="search" value={value} maxLength={80} onChange={(event) => onChange(event.target.value)} />
    </label>
  );
}

interface Option {
  value: string;
  label: string;
}

export function Select({
  label,
  value,
  options,
  onChange,
}: {
  label: string;
  value: string;
  options: readonly Option[];
  onChange: (value: string) => void;
}) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Every column, and then every column the other way round. */
export function orderOptions(columns: readonly { id: string; title: string }[], down: string): Option[] {
  return [false, true].flatMap((turned) =>
    columns.map(({ id, title }) => ({ value: `${id} ${turned}`, label: turned ? `${title} (${down})` : title })),
  );
}

/** The order that an option of `orderOptions` stands for. */
export function orderFrom(option: string): { sort: string; down: boolean } {
  const [sort = 'name', down] = option.split(' ');
  return { sort, down: down === 'true' };
}
