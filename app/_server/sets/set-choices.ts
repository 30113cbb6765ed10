import { getMessages } from 'next-intl/server';
import type { EditorWords } from '@/app/questions/editor/editor-context';
import type { SetChoices, SetWords } from '@/app/sets/editor/set-words';
import { listLiveVersions } from '@/db/queries/written-questions';
import { kinds } from '@/lib/questions/kinds';
import { blueprintsInOrder } from '@/lib/sets/blueprint';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../catalogue';
import { database } from '../database';

/** What the editor of sets offers in an organisation, and its words. */
export async function setEditorChoices(
  organizationId: string,
): Promise<{ words: SetWords; fieldWords: EditorWords; choices: SetChoices }> {
  const { sets, written } = (await getMessages()) as { sets: { editor: SetWords }; written: { editor: EditorWords } };
  return { words: sets.editor, fieldWords: written.editor, choices: await setChoices(organizationId) };
}

async function setChoices(organizationId: string): Promise<SetChoices> {
  const all = catalogue();
  const live = await listLiveVersions(database(), organizationId);
  return {
    topics: topicsInOrder(all).map(({ id, text }) => ({ value: id, label: text.en.name })),
    rigs: [...all.rigs.values()].map(({ id, text }) => ({ value: id, label: text.en.name })),
    written: live.map(({ questionId, title }) => ({ value: questionId, label: title })),
    kinds: [...kinds.values()].map(({ id, topics }) => ({
      value: id,
      label: all.questions.get(id)?.text.en.name ?? id,
      topics,
    })),
    blueprints: blueprintsInOrder(all.blueprints).map(({ id, text }) => ({ value: id, label: text.en.name })),
  };
}
