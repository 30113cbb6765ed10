'use client';

import { createContext, useContext, useId, useState } from 'react';
import styles from './placed.module.css';

/** Where something to be chosen lies on a figure, in shares of it, for CSS. */
export interface Area {
  left: string;
  top: string;
  width: string;
  height: string;
}

/** Something on a figure that can be chosen. */
export interface Place {
  id: string;
  /** What is drawn round it. */
  ring: Area;
  /** What can be pressed. */
  hit: Area;
  /** A sign beside its ring, and where: a numeral of the list, or the letter of a stretch. */
  badge?: { sign: string; left: string; top: string };
}

interface Group {
  id: string;
  chosen: string | undefined;
  choose: (id: string) => void;
}

const GroupContext = createContext<Group | null>(null);

/** Keeps what is chosen on a figure and what the list beside it shows in step. */
export function PlacedGroup({ given, children }: { given: string | undefined; children: React.ReactNode }) {
  const id = useId();
  const [chosen, choose] = useState(given);
  return <GroupContext value={{ id, chosen, choose }}>{children}</GroupContext>;
}

function useGroup(): Group {
  const group = useContext(GroupContext);
  if (!group) throw new Error('Places need a PlacedGroup around them');
  return group;
}

/** One radio button for each place, lying over the figure. The list of places names them. */
export function PlacedRadios({
  name,
  label,
  places,
  given,
}: {
  name: string;
  label: string;
  places: readonly Place[];
  given: string | undefined;
}) {
  const { id: group, choose } = useGroup();
  return (
    <div role="radiogroup" aria-label={label} className={styles.radios}>
      {places.map(({ id, ring, hit, badge }) => (
        <span key={id}>
          <input
            id={`${group}-${id}`}
            className={styles.hit}
            style={{ ...hit }}
            type="radio"
            name={name}
            value={id}
            required
            defaultChecked={id === given}
            aria-labelledby={`${group}-${id}-name`}
            onChange={() => choose(id)}
          />
          <span className={styles.ring} style={{ ...ring }} aria-hidden="true" />
          {badge && (
            <span className={styles.badge} style={{ left: badge.left, top: badge.top }} aria-hidden="true">
              {badge.sign}
            </span>
          )}
        </span>
      ))}
    </div>
  );
}

/** The same places as a list, each as good to press as the place itself. */
export function PlacedList({
  items,
}: {
  items: readonly { id: string; sign: React.ReactNode; words: React.ReactNode }[];
}) {
  const { id: group, chosen } = useGroup();
  return (
    <ul className={styles.list}>
      {items.map(({ id, sign, words }) => (
        <li key={id}>
          <label htmlFor={`${group}-${id}`} className={`${styles.listed} ${id === chosen ? styles.chosen : ''}`}>
            <span className={styles.dot} aria-hidden="true" />
            {sign}
            <span id={`${group}-${id}-name`}>{words}</span>
          </label>
        </li>
      ))}
    </ul>
  );
}
