import type { Drawing } from '@/lib/rig/drawing';
import type { Box } from './symbol-box';

/** Height above the parts that only the ports need. */
const PORT_ROOM = 52;

/** What of a sheet is shown: all of it with ports, less their room without. */
export function sheetBox({ width, height }: Drawing, taps: readonly string[]): Box {
  return [0, taps.length > 0 ? 0 : PORT_ROOM, width, height];
}

/** Where something stands on what is shown of its sheet, for CSS. */
export function onSheet([left, top, right, bottom]: Box, [fromLeft, fromTop, toRight, toBottom]: Box) {
  const [width, height] = [toRight - fromLeft, toBottom - fromTop];
  return {
    left: percent((left - fromLeft) / width),
    top: percent((top - fromTop) / height),
    width: percent((right - left) / width),
    height: percent((bottom - top) / height),
  };
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(3))}%`;
}
