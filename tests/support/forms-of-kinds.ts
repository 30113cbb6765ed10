import type { AnswerForm } from '@/lib/questions/answer';
import type { QuestionKindId } from '@/lib/questions/question';

/** The ways in which a kind is answered. That there are these and no others, `expectSoundQuestions` says over its seeds. */
export const formsOfKinds: Readonly<Record<QuestionKindId, readonly AnswerForm['form'][]>> = {
  'find-it': ['choice', 'point'],
  'put-in-order': ['order'],
  'which-limit': ['choice'],
  'read-dial': ['numbers'],
  judge: ['choice'],
  'work-out': ['choice', 'numbers'],
  'what-happens': ['grid', 'choice'],
  'what-is-left': ['several'],
  'next-check': ['choice'],
  'which-tool': ['choice'],
  'read-code': ['several', 'choice', 'numbers'],
  'spot-hazard': ['choice', 'several'],
  'read-trace': ['choice', 'stretch'],
};
