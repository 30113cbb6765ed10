import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import { dateFormats, type OrganizationSettings } from '@/lib/accounts/settings';
import { unitChoices } from '@/lib/accounts/unit-choices';
import { LONGEST_NAME, type Settled } from './parse-settings';
import { timeZones } from './time-zones';

/** What an organisation settles, each with what it is for. */
export function SettingsFields({ name, settings }: { name: string; settings: OrganizationSettings }) {
  const t = useTranslations('settings');
  const units = useTranslations('header.unit');
  const { dateFormat, timeZone, evidenceHalfLifeDays, passMarks } = settings;
  return (
    <>
      <Field name="name">
        <input
          id="name"
          name="name"
          defaultValue={name}
          required
          maxLength={LONGEST_NAME}
          aria-describedby="name-for"
        />
      </Field>
      <Field name="units">
        <Select name="units" value={settings.units} options={unitChoices} label={(value) => units(value)} />
      </Field>
      <Field name="dateFormat">
        <Select
          name="dateFormat"
          value={dateFormat}
          options={dateFormats}
          label={(value) => t(`dateFormats.${value}`)}
        />
      </Field>
      <Field name="timeZone">
        <Select name="timeZone" value={timeZone} options={timeZones(timeZone)} label={(value) => value} />
      </Field>
      <Field name="evidenceHalfLifeDays">
        <NumberInput name="evidenceHalfLifeDays" value={evidenceHalfLifeDays} />
      </Field>
      <Field name="practice">
        <NumberInput name="practice" value={passMarks.practice} />
      </Field>
      <Field name="assessed">
        <NumberInput name="assessed" value={passMarks.assessed} />
      </Field>
    </>
  );
}

function Field({ name, children }: { name: Settled; children: React.ReactNode }) {
  const t = useTranslations('settings');
  return (
    <div className={ui.field}>
      <label className={ui.label} htmlFor={name}>
        {t(`labels.${name}`)}
      </label>
      {children}
      <p id={`${name}-for`} className={ui.small}>
        {t(`hints.${name}`)}
      </p>
    </div>
  );
}

function Select<T extends string>({
  name,
  value,
  options,
  label,
}: {
  name: Settled;
  value: T;
  options: readonly T[];
  label: (value: T) => string;
}) {
  return (
    <select id={name} name={name} defaultValue={value} aria-describedby={`${name}-for`}>
      {options.map((option) => (
        <option key={option} value={option}>
          {label(option)}
        </option>
      ))}
    </select>
  );
}

/** Not of the number type, which would hand on nothing of what somebody typed wrong. */
function NumberInput({ name, value }: { name: Settled; value: number }) {
  return (
    <input id={name} name={name} inputMode="numeric" defaultValue={value} required aria-describedby={`${name}-for`} />
  );
}
