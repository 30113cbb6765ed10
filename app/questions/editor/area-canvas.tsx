'use client';

import { type PointerEvent, useState } from 'react';
import type { DraftArea, DraftPicture } from './draft';
import styles from './editor.module.css';
import { useEditor } from './editor-context';

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Narrower than this, in shares of the picture, nothing was meant to be drawn. */
const LEAST_SIDE = 0.01;

/** The picture with its areas, on which another one can be drawn. Whoever draws nothing uses the fields below. */
export function AreaCanvas({
  picture,
  areas,
  right,
  onDraw,
}: {
  picture: DraftPicture;
  areas: readonly DraftArea[];
  right: readonly string[];
  onDraw: (box: Box) => void;
}) {
  const { words } = useEditor();
  const [start, setStart] = useState<{ x: number; y: number }>();
  const [drawn, setDrawn] = useState<Box>();

  function begin(event: PointerEvent<HTMLDivElement>) {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    setStart(placeOf(event));
  }

  function follow(event: PointerEvent<HTMLDivElement>) {
    if (start) setDrawn(boxOf(start, placeOf(event)));
  }

  function end(event: PointerEvent<HTMLDivElement>) {
    if (!start) return;
    const box = boxOf(start, placeOf(event));
    setStart(undefined);
    setDrawn(undefined);
    if (box.right - box.left >= LEAST_SIDE && box.bottom - box.top >= LEAST_SIDE) onDraw(box);
  }

  function breakOff() {
    setStart(undefined);
    setDrawn(undefined);
  }

  return (
    <figure>
      <figcaption className={styles.caption}>{words.drawHere}</figcaption>
      <div
        className={styles.canvas}
        data-canvas=""
        onPointerDown={begin}
        onPointerMove={follow}
        onPointerUp={end}
        onPointerCancel={breakOff}
      >
        {/* biome-ignore lint/performance/noImgElement: served as it is, behind a door */}
        <img
          className={styles.canvasPicture}
          src={`/pictures/${picture.id}`}
          alt={picture.alt}
          width={picture.width}
          height={picture.height}
          draggable={false}
        />
        {areas.map((area, index) => (
          <span
            key={area.id}
            className={`${styles.area} ${right.includes(area.id) ? styles.areaRight : ''}`}
            style={styleOf(area)}
            aria-hidden="true"
          >
            <span className={styles.areaNumber}>{index + 1}</span>
          </span>
        ))}
        {drawn && <span className={styles.area} style={styleOf(inPercent(drawn))} aria-hidden="true" />}
      </div>
    </figure>
  );
}

/** Where the pointer stands, in shares of the picture. */
function placeOf({ currentTarget, clientX, clientY }: PointerEvent<HTMLDivElement>): { x: number; y: number } {
  const { left, top, width, height } = currentTarget.getBoundingClientRect();
  return { x: within((clientX - left) / width), y: within((clientY - top) / height) };
}

function within(share: number): number {
  return Math.min(1, Math.max(0, share));
}

function boxOf(a: { x: number; y: number }, b: { x: number; y: number }): Box {
  return { left: Math.min(a.x, b.x), right: Math.max(a.x, b.x), top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) };
}

function inPercent({ left, top, right, bottom }: Box): Record<keyof Box, string> {
  return { left: `${left * 100}`, top: `${top * 100}`, right: `${right * 100}`, bottom: `${bottom * 100}` };
}

/** Sides that are being typed may be anything yet. */
function styleOf(sides: Record<keyof Box, string>) {
  const [left, top, right, bottom] = [sides.left, sides.top, sides.right, sides.bottom].map((side) =>
    Math.min(100, Math.max(0, Number(side.replace(',', '.')) || 0)),
  ) as [number, number, number, number];
  return {
    left: `${left}%`,
    top: `${top}%`,
    width: `${Math.max(0, right - left)}%`,
    height: `${Math.max(0, bottom - top)}%`,
  };
}
