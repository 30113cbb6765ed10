import type { WrittenForm } from '@/lib/questions/written/written-forms';
import type { WrittenBody, WrittenQuestion } from '@/lib/questions/written/written-question';

/** A question as it stands in the editor: numbers as they were typed, so that nothing typed is lost to being wrong. */
export interface Draft {
  title: string;
  stem: string;
  explanation: string;
  topics: string[];
  difficulty: string;
  seconds: string;
  picture: DraftPicture | null;
  body: DraftBody;
}

export interface DraftPicture {
  id: string;
  width: number;
  height: number;
  alt: string;
}

export interface DraftOption {
  id: string;
  text: string;
  because: string;
}

export interface DraftVariable {
  name: string;
  from: string;
  to: string;
  step: string;
}

/** Sides in percent of the picture. */
export interface DraftArea {
  id: string;
  name: string;
  left: string;
  top: string;
  right: string;
  bottom: string;
}

export interface DraftPart {
  what: 'element' | 'node' | 'port';
  of: string;
}

export type DraftBody =
  | { form: 'choice' | 'several'; shuffle: boolean; options: DraftOption[]; right: string[] }
  | {
      form: 'numbers';
      variables: DraftVariable[];
      formula: string;
      /** Empty for a bare number. */
      unit: string;
      tolerance: { kind: 'absolute' | 'percent'; amount: string };
      decimals: string;
    }
  | { form: 'order'; items: DraftOption[] }
  | { form: 'point'; rig: string; right: DraftPart[] }
  | { form: 'spot'; picture: DraftPicture | null; areas: DraftArea[]; right: string[] }
  | { form: 'words'; most: string; model: string; guidance: string; steps: string };

export type DraftOf<Form extends DraftBody['form']> = Extract<DraftBody, { form: Form }>;

/** What one begins a question with. */
export function emptyDraft(form: WrittenForm): Draft {
  const texts = { title: '', stem: '', explanation: '', topics: [] };
  return { ...texts, difficulty: '0', seconds: '60', picture: null, body: emptyBody(form) };
}

function emptyBody(form: WrittenForm): DraftBody {
  switch (form) {
    case 'choice':
    case 'several':
      return { form, shuffle: true, options: ['1', '2', '3'].map(emptyOption), right: [] };
    case 'numbers':
      return {
        form,
        variables: [{ name: 'x', from: '', to: '', step: '1' }],
        formula: '',
        unit: '',
        tolerance: { kind: 'percent', amount: '1' },
        decimals: '0',
      };
    case 'order':
      return { form, items: ['1', '2', '3'].map(emptyOption) };
    case 'point':
      return { form, rig: '', right: [] };
    case 'spot':
      return { form, picture: null, areas: [], right: [] };
    case 'words':
      return { form, most: '600', model: '', guidance: '', steps: '3' };
  }
}

export function emptyOption(id: string): DraftOption {
  return { id, text: '', because: '' };
}

/** An id that none of the items has. */
export function freeId(items: readonly { id: string }[]): string {
  const numbers = items.map(({ id }) => Number(id)).filter(Number.isInteger);
  return String(Math.max(0, ...numbers) + 1);
}

/** A question that was written, to be gone on with. */
export function draftOf({ difficulty, seconds, picture, topics, body, ...texts }: WrittenQuestion): Draft {
  return {
    ...texts,
    topics: [...topics],
    difficulty: String(difficulty),
    seconds: String(seconds),
    picture: picture ?? null,
    body: draftBodyOf(body),
  };
}

function draftBodyOf(body: WrittenBody): DraftBody {
  switch (body.form) {
    case 'choice':
      return { ...body, options: body.options.map(draftOptionOf), right: [body.right] };
    case 'several':
      return { ...body, options: body.options.map(draftOptionOf) };
    case 'numbers':
      return {
        ...body,
        variables: body.variables.map(({ name, ...grid }) => ({ name, ...asTyped(grid) })),
        unit: body.unit ?? '',
        tolerance: { ...body.tolerance, amount: String(body.tolerance.amount) },
        decimals: String(body.decimals),
      };
    case 'order':
      return { ...body, items: body.items.map(draftOptionOf) };
    case 'point':
      return body;
    case 'spot':
      return {
        ...body,
        areas: body.areas.map(({ id, name, left, top, right, bottom }) => ({
          id,
          name,
          left: percent(left),
          top: percent(top),
          right: percent(right),
          bottom: percent(bottom),
        })),
      };
    case 'words':
      return { ...body, most: String(body.most), steps: String(body.steps) };
  }
}

function draftOptionOf({
  id,
  text,
  because = '',
}: {
  id: string;
  text: string;
  because?: string | undefined;
}): DraftOption {
  return { id, text, because };
}

function asTyped<Name extends string>(numbers: Record<Name, number>): Record<Name, string> {
  return Object.fromEntries(Object.entries<number>(numbers).map(([name, value]) => [name, String(value)])) as Record<
    Name,
    string
  >;
}

/** A share as percent, to a hundredth of one. */
export function percent(share: number): string {
  return String(Number((share * 100).toFixed(2)));
}
