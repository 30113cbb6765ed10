import { useTranslations } from 'next-intl';
import type { Choice, RigChoices } from '@/app/_server/rig-choices';
import ui from '@/app/_ui/ui.module.css';

/** Names of the three fields that make up an answer. */
export interface AnswerNames {
  cause: string;
  repair: string;
  proof: string;
}

/** Cause, repair and the check that is to prove it. The lists are the same in every case. */
export function AnswerFields({
  names,
  labels,
  pick,
  required,
  choices,
}: {
  names: AnswerNames;
  labels: AnswerNames;
  /** What stands in a list from which nothing is chosen. */
  pick: string;
  required: boolean;
  choices: RigChoices;
}) {
  const run = useTranslations('conditionsShort');
  const common = { pick, required };
  return (
    <>
      <Choose name={names.cause} label={labels.cause} {...common}>
        <Options of={choices.causes} />
      </Choose>
      <Choose name={names.repair} label={labels.repair} {...common}>
        <Options of={choices.repairs} />
      </Choose>
      <Choose name={names.proof} label={labels.proof} {...common}>
        {choices.checks.map(({ id, name, proofConditions }) => (
          <optgroup key={id} label={name}>
            {proofConditions.map((condition) => (
              <option key={condition} value={`${id}|${condition}`}>
                {`${name}, ${run(condition)}`}
              </option>
            ))}
          </optgroup>
        ))}
      </Choose>
    </>
  );
}

function Options({ of }: { of: readonly Choice[] }) {
  return of.map(({ id, name }) => (
    <option key={id} value={id}>
      {name}
    </option>
  ));
}

function Choose({
  name,
  label,
  pick,
  required,
  children,
}: {
  name: string;
  label: string;
  pick: string;
  required: boolean;
  children: React.ReactNode;
}) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <select name={name} required={required} defaultValue="">
        {/* What need not be answered can be taken back. */}
        <option value="" disabled={required}>
          {pick}
        </option>
        {children}
      </select>
    </label>
  );
}
