'use client';

import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import { AreaCanvas } from './area-canvas';
import { type DraftArea, type DraftOf, freeId, percent } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';
import { FaultText, Typed } from './fields';
import { PictureField } from './picture-field';
import { changedAt, RowButtons } from './row-buttons';

const MOST_AREAS = 20;
/** Where an area lies that is added without drawing it, in shares of the picture. */
const MIDDLE = { left: 0.4, top: 0.4, right: 0.6, bottom: 0.6 };

type Spot = DraftOf<'spot'>;

/** Areas of a picture, drawn on it or given by their sides. */
export function SpotEditor({ body, onChange }: { body: Spot; onChange: (body: Spot) => void }) {
  const { words } = useEditor();
  const { picture, areas, right } = body;
  const change = (changes: Partial<Spot>) => onChange({ ...body, ...changes });
  const add = ({ left, top, right: end, bottom }: typeof MIDDLE) => {
    if (areas.length >= MOST_AREAS) return;
    const sides = { left: percent(left), top: percent(top), right: percent(end), bottom: percent(bottom) };
    change({ areas: [...areas, { id: freeId(areas), name: '', ...sides }] });
  };
  return (
    <>
      <PictureField
        label={words.spotPicture}
        at="body.picture"
        picture={picture}
        shown={false}
        onChange={(one) => change({ picture: one })}
      />
      {picture && <AreaCanvas picture={picture} areas={areas} right={right} onDraw={add} />}
      <fieldset className={ui.stack}>
        <legend className={styles.legend}>{words.areas}</legend>
        <p className={ui.small}>{words.areasRule}</p>
        <FaultText at="body.areas" />
        <FaultText at="body.right" />
        <ol className={styles.rows}>
          {areas.map((area, index) => (
            <AreaRow
              key={area.id}
              area={area}
              index={index}
              isRight={right.includes(area.id)}
              onChange={(changes) => change({ areas: changedAt(areas, index, changes) })}
              onMark={(isRight) =>
                change({ right: isRight ? [...right, area.id] : right.filter((one) => one !== area.id) })
              }
              onRemove={() =>
                change({ areas: areas.filter((_, at) => at !== index), right: right.filter((one) => one !== area.id) })
              }
            />
          ))}
        </ol>
        <button type="button" disabled={areas.length >= MOST_AREAS} onClick={() => add(MIDDLE)}>
          {words.addArea}
        </button>
      </fieldset>
    </>
  );
}

function AreaRow({
  area,
  index,
  isRight,
  onChange,
  onMark,
  onRemove,
}: {
  area: DraftArea;
  index: number;
  isRight: boolean;
  onChange: (changes: Partial<DraftArea>) => void;
  onMark: (isRight: boolean) => void;
  onRemove: () => void;
}) {
  const { words } = useEditor();
  const label = withValues(words.area, { n: index + 1 });
  const at = `body.areas.${index}`;
  const sides = [
    ['left', words.left],
    ['top', words.top],
    ['right', words.rightSide],
    ['bottom', words.bottom],
  ] as const;
  return (
    <li className={styles.row}>
      <fieldset className={ui.stack} aria-label={label}>
        <b aria-hidden="true">{label}</b>
        <label className={styles.tick}>
          <input
            type="checkbox"
            checked={isRight}
            aria-label={withValues(words.areaIsRight, { n: index + 1 })}
            onChange={(event) => onMark(event.currentTarget.checked)}
          />
          {words.right}
        </label>
        <Typed
          label={words.areaName}
          at={`${at}.name`}
          value={area.name}
          most={500}
          {...(index === 0 && { rule: words.areaNameRule })}
          onChange={(name) => onChange({ name })}
        />
        <FaultText at={`${at}.text`} />
        <div className={styles.four}>
          {sides.map(([side, name]) => (
            <Typed
              key={side}
              label={name}
              at={`${at}.${side}`}
              numeric
              most={10}
              value={area[side]}
              onChange={(value) => onChange({ [side]: value })}
            />
          ))}
        </div>
        <FaultText at={at} />
      </fieldset>
      <RowButtons id={`area-${area.id}`} label={label} index={index} count={2} least={0} onRemove={onRemove} />
    </li>
  );
}
