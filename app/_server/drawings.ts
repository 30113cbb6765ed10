import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Drawing, drawingSchema } from '@/lib/rig/drawing';
import { catalogue } from './catalogue';

const loaded = new Map<string, Drawing>();

/** The drawing of a rig of the catalogue, read and validated once. @throws when it is missing or malformed, naming the file. */
export function drawingOf(rig: string): Drawing {
  const known = loaded.get(rig);
  if (known) return known;
  if (!catalogue().rigs.has(rig)) throw new RangeError(`No rig ${rig}`);
  const file = join(process.cwd(), 'content', 'drawings', `${rig}.json`);
  const drawing = parseDrawing(file);
  loaded.set(rig, drawing);
  return drawing;
}

function parseDrawing(file: string): Drawing {
  try {
    return drawingSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch (cause) {
    throw new Error(`Drawing does not load: ${file}`, { cause });
  }
}
