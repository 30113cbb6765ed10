import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './server';

/** Every cause as its content file names it: read from the files, so that a test needs no code under test for it. */
export function causeNames(): { id: string; name: string }[] {
  const folder = join(root, 'content/causes');
  return readdirSync(folder).map((file) => {
    const { id, text } = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    return { id, name: text.en.name };
  });
}
