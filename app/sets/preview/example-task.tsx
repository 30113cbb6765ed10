import { getTranslations } from 'next-intl/server';
import { faceOfCase } from '@/app/_server/attempt-view';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { truthView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { type AskedPlace, askedQuestion } from '@/app/_server/questions/asked-question';
import { markedView } from '@/app/_server/questions/marked-view';
import { viewOf } from '@/app/_server/questions/question-view';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import { QuestionFields } from '@/app/_ui/questions/question-fields';
import ui from '@/app/_ui/ui.module.css';
import { Truth } from '@/app/learn/cases/[attemptId]/debrief/truth';
import { WorkOrder } from '@/app/learn/cases/[attemptId]/work-order';
import { listLiveVersions } from '@/db/queries/written-questions';
import type { Mark } from '@/lib/questions/mark';
import { type CaseItem, drawCase } from '@/lib/sets/draw-case';
import { drawQuestion } from '@/lib/sets/draw-question';
import { itemFault } from '@/lib/sets/item-faults';
import type { SetItem } from '@/lib/sets/set-body';

/** Of an answer that nobody gave. */
const UNMARKED: Mark = { credit: 0, score: 0, notes: [] };

/** An example of what an item of a set asks for: nobody is ever given this very one. For those who teach. */
export async function ExampleTask({
  item,
  seed,
  answers,
  organizationId,
}: {
  item: SetItem;
  /** Another one for another number. */
  seed: string;
  /** Whether what is wrong, or the right answer, is shown. */
  answers: boolean;
  organizationId: string;
}) {
  const t = await getTranslations('sets.preview');
  const word = `preview ${item.id} ${seed}`;
  if (itemFault(item, catalogue())) return <p className={ui.alert}>{t('never')}</p>;
  if (item.kind === 'case' || item.kind === 'cases') return <ExampleCase item={item} seed={word} answers={answers} />;
  const place = await placeOf(item, word, organizationId);
  if (!place) return <p className={ui.alert}>{t('notLive')}</p>;
  const { question, content } = await askedQuestion(place);
  const context = { content, catalogue: catalogue(), units: (await readDisplay()).units };
  if (answers) return <MarkedQuestion marked={markedView(question, null, UNMARKED, context)} />;
  return <QuestionFields view={viewOf(question, context)} keys={false} />;
}

async function placeOf(
  item: Extract<SetItem, { kind: 'written' | 'questions' }>,
  seed: string,
  organizationId: string,
): Promise<AskedPlace | undefined> {
  if (item.kind === 'questions') return { spec: drawQuestion(item, seed), writtenVersionId: null, seed };
  const live = await listLiveVersions(database(), organizationId);
  const version = live.find(({ questionId }) => questionId === item.questionId);
  return version && { spec: null, writtenVersionId: version.id, seed };
}

async function ExampleCase({ item, seed, answers }: { item: CaseItem; seed: string; answers: boolean }) {
  const t = await getTranslations('sets.preview');
  const found = drawCase(item, seed, catalogue());
  if ('unmet' in found)
    return <p className={ui.alert}>{t('unmet', { wish: t(`wishes.${found.unmet}`), drawn: found.drawn })}</p>;
  const { case: theCase, certificate } = found;
  const { cause, severity, also } = theCase.truth;
  const { units } = await readDisplay();
  return (
    // No grid: the parts of the bench's page say where they stand in its own.
    <div>
      <p className={ui.small}>
        {t('case', {
          code: theCase.code,
          minutes: certificate.route.minutes,
          difficulty: certificate.difficulty.toFixed(1).replace('-', '−'),
        })}
      </p>
      {answers ? (
        <Truth view={{ truths: [{ cause, severity }, ...(also ? [also] : [])].map(truthView) }} />
      ) : (
        <WorkOrder view={{ minutes: 0 }} face={faceOfCase(theCase)} units={units} heading="h3" />
      )}
    </div>
  );
}
