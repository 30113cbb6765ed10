import { getTranslations } from 'next-intl/server';
import type { Difficulty } from '@/app/learn/random-choices';
import type { UnmetWish } from '@/lib/wishes/find-case';
import type { Wishes } from '@/lib/wishes/wishes';
import { catalogue } from './catalogue';
import { type ProblemCode, problem } from './problems';

/** Says which wish there is no case for, and what may help. */
export async function unmetSentence(unmet: UnmetWish, wishes: Wishes, difficulty: Difficulty): Promise<string> {
  const t = await getTranslations('learn');
  const { topics } = catalogue();
  return problem(codeOf(unmet), {
    rig: wishes.rigs ?? '',
    topic: (wishes.topics ?? []).map((id) => topics.get(id)?.text.en.name ?? id),
    difficulty: t(`difficulties.${difficulty}`),
    drawn: unmet.drawn,
    certified: unmet.certified,
  });
}

/** Names that content does not have are told apart from those that never go together. */
function codeOf({ unmet, never, names }: UnmetWish): ProblemCode {
  if (unmet === 'rigs') return 'unknown-rig';
  if (unmet === 'topics' && names.some((id) => !catalogue().topics.has(id))) return 'unknown-topic';
  return unmet === 'topics' && never ? 'unmet-topics-never' : `unmet-${unmet}`;
}
