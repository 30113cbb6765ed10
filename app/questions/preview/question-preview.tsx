import { catalogue } from '@/app/_server/catalogue';
import { readDisplay } from '@/app/_server/display';
import { markedView } from '@/app/_server/questions/marked-view';
import { viewOf } from '@/app/_server/questions/question-view';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import { QuestionFields } from '@/app/_ui/questions/question-fields';
import type { Mark } from '@/lib/questions/mark';
import { questionFromWritten } from '@/lib/questions/written/question-from-written';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';

/** Of an answer that nobody gave. */
const UNMARKED: Mark = { credit: 0, score: 0, notes: [] };

/** A written question as a learner sees it, before the answer or after. */
export async function QuestionPreview({
  written,
  seed,
  answers,
}: {
  written: WrittenQuestion;
  seed: string;
  /** Whether the right answer and the explanation are shown. */
  answers: boolean;
}) {
  const question = questionFromWritten(written, `preview ${seed}`, catalogue());
  const context = { content: undefined, catalogue: catalogue(), units: (await readDisplay()).units };
  if (answers) return <MarkedQuestion marked={markedView(question, null, UNMARKED, context)} />;
  return <QuestionFields view={viewOf(question, context)} keys={false} />;
}
