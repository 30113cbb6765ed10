'use client';

import ui from '@/app/_ui/ui.module.css';
import type { DraftOf, DraftPart } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { Chosen, FaultText } from './fields';

/** A system with all that can be pointed at on its drawing. */
export interface RigParts {
  id: string;
  name: string;
  parts: readonly (DraftPart & { name: string })[];
}

type Point = DraftOf<'point'>;

/** What has to be pointed at on the drawing of a system. */
export function PointEditor({
  body,
  rigs,
  onChange,
}: {
  body: Point;
  rigs: readonly RigParts[];
  onChange: (body: Point) => void;
}) {
  const { words } = useEditor();
  const parts = rigs.find(({ id }) => id === body.rig)?.parts ?? [];
  return (
    <>
      <Chosen
        label={words.rig}
        at="body.rig"
        value={body.rig}
        options={[{ value: '', label: words.rigChoose }, ...rigs.map(({ id, name }) => ({ value: id, label: name }))]}
        onChange={(rig) => onChange({ ...body, rig, right: [] })}
      />
      {parts.length > 0 && (
        <fieldset className={ui.stack}>
          <legend className={styles.legend}>{words.parts}</legend>
          <p className={ui.small}>{words.partsRule}</p>
          <FaultText at="body.right" />
          {body.right.map((_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: faults are found by the place in the list
            <FaultText key={index} at={`body.right.${index}`} />
          ))}
          {(['element', 'node', 'port'] as const).map((what) => (
            <Kind
              key={what}
              title={words.kinds[what]}
              parts={parts.filter((part) => part.what === what)}
              right={body.right}
              onChange={(right) => onChange({ ...body, right })}
            />
          ))}
        </fieldset>
      )}
    </>
  );
}

function Kind({
  title,
  parts,
  right,
  onChange,
}: {
  title: string;
  parts: RigParts['parts'];
  right: readonly DraftPart[];
  onChange: (right: DraftPart[]) => void;
}) {
  const others = (part: DraftPart) => right.filter(({ what, of }) => what !== part.what || of !== part.of);
  const isRight = (part: DraftPart) => others(part).length < right.length;
  return (
    <details open={parts.some(isRight) || undefined}>
      <summary className={styles.summary}>{title}</summary>
      <div className={styles.parts}>
        {parts.map(({ name, what, of }) => (
          <label key={of} className={styles.tick}>
            <input
              type="checkbox"
              checked={isRight({ what, of })}
              onChange={(event) =>
                onChange(event.currentTarget.checked ? [...right, { what, of }] : others({ what, of }))
              }
            />
            {name}
          </label>
        ))}
      </div>
    </details>
  );
}
