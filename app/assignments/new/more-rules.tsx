'use client';

import { useState } from 'react';
import ui from '@/app/_ui/ui.module.css';
import type { AssignmentRules } from '@/lib/assignments/rules';
import { type Part, parts } from '@/lib/grading/grade';
import styles from '../assignments.module.css';
import { FieldGroup, WrongField, WrongSelect } from '../form-fields';
import type { FormWords } from './what-and-when';

/** Under which rules it is done, handed in and marked. */
export function MoreRules({
  first,
  usual,
  labels,
  words,
}: {
  first: AssignmentRules;
  usual: Readonly<Record<Part, number>>;
  labels: Readonly<Record<string, string>>;
  words: FormWords;
}) {
  const taken = first.late === 'refused' ? undefined : first.late;
  const [late, setLate] = useState(taken ? 'taken' : 'refused');
  return (
    <>
      <FieldGroup legend={words.how}>
        <div className={styles.pair}>
          <WrongSelect
            label={words.mode}
            rule={words.modeRule}
            name="mode"
            defaultValue={first.mode}
            options={[
              { value: 'assessed', label: words.assessed },
              { value: 'practice', label: words.practice },
            ]}
          />
          <WrongSelect
            label={words.seeds}
            rule={words.seedsRule}
            name="seeds"
            defaultValue={first.seeds}
            options={[
              { value: 'parallel', label: words.parallel },
              { value: 'same', label: words.same },
            ]}
          />
          <WrongField
            label={words.turns}
            rule={words.turnsRule}
            name="turns"
            inputMode="numeric"
            defaultValue={first.turns}
          />
          <WrongField
            label={words.minutes}
            rule={words.minutesRule}
            name="minutes"
            inputMode="numeric"
            defaultValue={first.minutes ?? ''}
          />
        </div>
      </FieldGroup>
      <FieldGroup legend={words.lateTitle}>
        <div className={styles.pair}>
          <WrongSelect
            label={words.late}
            name="late"
            value={late}
            onChange={({ currentTarget }) => setLate(currentTarget.value)}
            options={[
              { value: 'refused', label: words.lateRefused },
              { value: 'taken', label: words.lateTaken },
            ]}
          />
          {/* Kept on the page, so that what was typed is there again. */}
          <div hidden={late === 'refused'}>
            <WrongField
              label={words.lateHours}
              rule={words.lateHoursRule}
              name="lateHours"
              inputMode="numeric"
              defaultValue={taken?.hours ?? 24}
            />
          </div>
          <div hidden={late === 'refused'}>
            <WrongField
              label={words.lateCost}
              rule={words.lateCostRule}
              name="lateCost"
              inputMode="numeric"
              defaultValue={taken?.cost ?? 10}
            />
          </div>
        </div>
      </FieldGroup>
      <FieldGroup legend={words.marking}>
        <Weights first={first.weights} usual={usual} labels={labels} words={words} />
        <Tick name="anonymous" first={first.anonymous} label={words.anonymous} />
        <Tick name="secondMarker" first={first.secondMarker} label={words.secondMarker} />
      </FieldGroup>
    </>
  );
}

function Weights({
  first,
  usual,
  labels,
  words,
}: {
  first: AssignmentRules['weights'];
  usual: Readonly<Record<Part, number>>;
  labels: Readonly<Record<string, string>>;
  words: FormWords;
}) {
  const [own, setOwn] = useState(first !== null);
  const [typed, setTyped] = useState<Record<Part, string>>(() => asTyped(first ?? usual));
  const sum = parts.reduce((all, part) => all + Number(typed[part]), 0);
  return (
    <>
      <label className={styles.tick}>
        <input
          type="checkbox"
          name="ownWeights"
          checked={own}
          onChange={({ currentTarget }) => setOwn(currentTarget.checked)}
        />
        <span>{words.ownWeights}</span>
      </label>
      <div hidden={!own}>
        <FieldGroup legend={words.weights} name="weights">
          <div className={styles.weights}>
            {parts.map((part) => (
              <label key={part} className={ui.field}>
                <span>{labels[part]}</span>
                <input
                  name={`weight.${part}`}
                  inputMode="numeric"
                  value={typed[part]}
                  onChange={({ currentTarget: { value } }) => setTyped((before) => ({ ...before, [part]: value }))}
                />
              </label>
            ))}
          </div>
          <p className={ui.small} aria-live="polite">
            {words.sum} <b>{Number.isFinite(sum) ? sum : '–'}</b> / 100
          </p>
        </FieldGroup>
      </div>
    </>
  );
}

function asTyped(weights: Readonly<Record<Part, number>>): Record<Part, string> {
  return Object.fromEntries(parts.map((part) => [part, String(weights[part])])) as Record<Part, string>;
}

function Tick({ name, first, label }: { name: string; first: boolean; label: string }) {
  return (
    <label className={styles.tick}>
      <input type="checkbox" name={name} defaultChecked={first} />
      <span>{label}</span>
    </label>
  );
}
