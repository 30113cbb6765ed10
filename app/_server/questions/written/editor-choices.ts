import { getMessages } from 'next-intl/server';
import type { EditorWords } from '@/app/questions/editor/editor-context';
import type { RigParts } from '@/app/questions/editor/point-editor';
import { targetsOn } from '@/lib/questions/written/targets-on';
import type { Rig } from '@/lib/rig/rig';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../../catalogue';
import { nameOf } from '../say';

/** What the editor offers, and its words. */
export async function editorChoices() {
  const content = catalogue();
  const { written } = (await getMessages()) as { written: { editor: EditorWords } };
  return {
    words: written.editor,
    topics: topicsInOrder(content).map(({ id, text }) => ({ id, name: text.en.name })),
    rigs: [...content.rigs.values()].map(partsOf),
  };
}

const everySort = [{ what: 'element' }, { what: 'node' }, { what: 'port' }] as const;

function partsOf(rig: Rig): RigParts {
  const parts = targetsOn(rig, everySort, catalogue()).map(({ what, of }) => {
    const name = nameOf({ name: what, id: of, of: rig.id }, catalogue());
    return { what, of, name: what === 'port' ? `${of}, ${name}` : name };
  });
  return { id: rig.id, name: rig.text.en.name, parts };
}
