import type { UnitChoice } from '@/app/_ui/display-choices';
import type { Catalogue } from '@/lib/catalogue';
import type { AnswerForm, Option, Shape } from '@/lib/questions/answer';
import type { Target } from '@/lib/questions/figure';
import type { QuestionFace } from '@/lib/questions/question';
import type { QuestionContent } from '@/lib/questions/question-content';
import type { Unit } from '@/lib/units';
import {
  type DrawingView,
  drawingView,
  type FigureView,
  figureView,
  type LetteredStretch,
  lettered,
  type PictureView,
  type ViewContext,
} from './figure-view';
import { type Said, sayer } from './say';

export interface OptionView {
  id: string;
  said: Said;
  figure?: FigureView;
}

export interface PartView {
  id: string;
  said: Said;
  units: readonly Unit[];
}

export interface TargetView extends Target {
  said: Said;
}

export interface ShapeView extends Omit<Shape, 'line'> {
  said: Said;
}

/** How a question is answered, in words. */
export type AnswerView =
  | { form: 'choice' | 'several'; options: readonly OptionView[] }
  | { form: 'order'; items: readonly OptionView[] }
  | { form: 'numbers'; parts: readonly PartView[] }
  | { form: 'point'; on: DrawingView; targets: readonly TargetView[] }
  | { form: 'grid'; rows: readonly OptionView[]; columns: readonly OptionView[] }
  | { form: 'stretch'; stretches: readonly LetteredStretch[] }
  | { form: 'spot'; on: PictureView; shapes: readonly ShapeView[] }
  | { form: 'words'; most: number };

/** All that a screen needs to ask a question: every line in words, every figure with what it draws. */
export interface QuestionView {
  stem: readonly Said[];
  figure?: FigureView;
  cautions: readonly string[];
  answer: AnswerView;
  units: UnitChoice;
}

/** Where the words and the figures of a question come from. */
export interface QuestionContext {
  /** The kind's words; undefined for a written question. */
  content: QuestionContent | undefined;
  catalogue: Catalogue;
  units: UnitChoice;
}

/**
 * A question as a screen asks it. Reads its face alone, so that a whole question may be handed in.
 *
 * @throws RangeError when it names what content does not have.
 */
export function viewOf(question: QuestionFace, { content, catalogue, units }: QuestionContext): QuestionView {
  const context: ViewContext = { catalogue, units, say: sayer(content, catalogue) };
  return {
    stem: question.stem.map(context.say),
    cautions: question.cautions ?? [],
    answer: answerView(question, context),
    units,
    ...(question.figure && { figure: figureView(question.figure, context) }),
  };
}

function answerView({ answer, figure }: QuestionFace, context: ViewContext): AnswerView {
  const { say } = context;
  const options = (list: readonly Option[]) => list.map((option) => optionView(option, context));
  switch (answer.form) {
    case 'choice':
    case 'several':
      return { form: answer.form, options: options(answer.options) };
    case 'order':
      return { form: 'order', items: options(answer.items) };
    case 'numbers':
      return { form: 'numbers', parts: answer.parts.map(({ id, line, units }) => ({ id, said: say(line), units })) };
    case 'point': {
      const targets = answer.targets.map(({ id, what, of, line }) => ({ id, what, of, said: say(line) }));
      return { form: 'point', on: pointedOn(answer, figure, context), targets };
    }
    case 'grid':
      return { form: 'grid', rows: options(answer.rows), columns: options(answer.columns) };
    case 'stretch':
      return { form: 'stretch', stretches: lettered(answer.stretches) };
    case 'spot': {
      const { picture, width, height, alt, shapes } = answer;
      const on = { picture, width, height, alt };
      return { form: 'spot', on, shapes: shapes.map(({ line, ...shape }) => ({ ...shape, said: say(line) })) };
    }
    case 'words':
      return { form: 'words', most: answer.most };
  }
}

function optionView({ id, line, figure }: Option, context: ViewContext): OptionView {
  return { id, said: context.say(line), ...(figure && { figure: figureView(figure, context) }) };
}

/** What is pointed at: the drawing that the question shows, or one without names, which would give the key away. */
function pointedOn(
  { rig, targets }: Extract<AnswerForm, { form: 'point' }>,
  figure: QuestionFace['figure'],
  context: ViewContext,
): DrawingView {
  const ports = targets.some(({ what }) => what === 'port');
  if (figure?.figure !== 'drawing' || figure.rig !== rig)
    return drawingView(rig, context.catalogue, { names: false, ports, marks: [] });
  const shown = figureView({ ...figure, ports: figure.ports || ports }, context);
  return shown as DrawingView;
}
