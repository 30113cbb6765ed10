import { catalogue } from '@/app/_server/catalogue';
import { askedQuestion, wordsOf } from '@/app/_server/questions/asked-question';
import { type MarkedView, markedView } from '@/app/_server/questions/marked-view';
import { type QuestionView, viewOf } from '@/app/_server/questions/question-view';
import type { SittingPlace } from '@/app/_server/sittings/read-sitting';
import type { UnitChoice } from '@/app/_ui/display-choices';

/** The question of a place as it is asked: nothing of its key. */
export async function questionView(place: SittingPlace, units: UnitChoice): Promise<QuestionView> {
  const { question, content } = await askedQuestion(place);
  return viewOf(question, { content, catalogue: catalogue(), units });
}

/** The question of a place as it was marked, a person's mark before the computed one. Undefined while it is not. */
export function placeMarked({ spec, mark }: SittingPlace, units: UnitChoice): MarkedView | undefined {
  if (!mark) return undefined;
  const { asked, answer, manual } = mark;
  const counted = manual ? { ...mark.mark, score: manual.score, credit: manual.score / asked.steps } : mark.mark;
  return markedView(asked, answer, counted, { content: wordsOf(spec, catalogue()), catalogue: catalogue(), units });
}

/** What a place has earned: null while a person has to mark it, undefined while nothing is marked. */
export function earned({ mark }: SittingPlace): number | null | undefined {
  return mark && (mark.manual?.score ?? mark.mark.score);
}
