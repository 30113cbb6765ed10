import type { WrittenBody, WrittenQuestion } from '../../questions/written/written-question';
import { inlineXhtmlOf, xhtmlOf } from './markdown';
import { ITEM_NAMESPACE, type Loss, MAP_RESPONSE, MATCH_CORRECT } from './terms';
import { formulaXml } from './write-formula';
import { Xml, xml } from './xml';

export interface WrittenItem {
  xml: string;
  /** What other readers will not get. */
  losses: Loss[];
}

/** Where a picture lies in the package, seen from an item. */
export function pictureHref(id: string): string {
  return `../pictures/${id}.webp`;
}

/** Identifiers of the standard begin with a letter or a line. */
function identifierOf(id: string): string {
  return /^[a-z]/.test(id) ? id : `_${id}`;
}

/** The parts of an item that a form fills. */
interface Parts {
  declarations: readonly Xml[];
  interaction: Xml;
  processing: Xml;
  losses?: readonly Loss[];
}

/**
 * A written question as an assessment item; undefined where the standard has no counterpart to its form.
 *
 * @source 1EdTech QTI 3.0: response declarations, outcome declarations, template declarations and processing, item body,
 *   response processing, modal feedback, in this order.
 */
export function writeItem(id: string, question: WrittenQuestion): WrittenItem | undefined {
  const parts = partsOf(question.body);
  if (!parts) return undefined;
  const { declarations, interaction, processing, losses = [] } = parts;
  const [responses, templates] = [declarations.filter(isResponse), declarations.filter((one) => !isResponse(one))];
  const item = xml`<?xml version="1.0" encoding="UTF-8"?>
<qti-assessment-item xmlns="${ITEM_NAMESPACE}" identifier="${id}" title="${question.title}" adaptive="false" time-dependent="false" xml:lang="en">
${responses}<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float"><qti-default-value><qti-value>0</qti-value></qti-default-value></qti-outcome-declaration>
<qti-outcome-declaration identifier="MAXSCORE" cardinality="single" base-type="float"><qti-default-value><qti-value>${mostPoints(question.body)}</qti-value></qti-default-value></qti-outcome-declaration>
<qti-outcome-declaration identifier="FEEDBACK" cardinality="single" base-type="identifier"><qti-default-value><qti-value>explanation</qti-value></qti-default-value></qti-outcome-declaration>
${templates}<qti-item-body>${stemXml(question)}${interaction}</qti-item-body>
${processing}
<qti-modal-feedback outcome-identifier="FEEDBACK" identifier="explanation" show-hide="show"><qti-content-body>${filled(xhtmlOf(question.explanation), question.body)}</qti-content-body></qti-modal-feedback>
</qti-assessment-item>
`;
  return { xml: item.text, losses: ['topics-and-difficulty', ...losses] };
}

function isResponse({ text }: Xml): boolean {
  return text.startsWith('<qti-response-declaration');
}

function mostPoints(body: WrittenBody): number {
  return body.form === 'words' ? body.steps : body.form === 'several' ? body.right.length : 1;
}

function stemXml({ stem, picture, body }: WrittenQuestion): Xml {
  const image = picture && xml`<p><img src="${pictureHref(picture.id)}" alt="${picture.alt}"/></p>`;
  return xml`<div>${filled(xhtmlOf(stem), body)}</div>${image}`;
}

/** A name in braces shows what was drawn for it. */
function filled(text: string, body: WrittenBody): Xml {
  if (body.form !== 'numbers') return new Xml(text);
  const names = body.variables.map(({ name }) => name);
  return new Xml(
    text.replace(/\{([a-z][a-z0-9_]*)\}/gi, (whole, name: string) =>
      names.includes(name) ? `<qti-printed-variable identifier="${name}"/>` : whole,
    ),
  );
}

function partsOf(body: WrittenBody): Parts | undefined {
  switch (body.form) {
    case 'choice':
      return choiceParts(body, [body.right]);
    case 'several':
      return choiceParts(body, body.right);
    case 'order':
      return orderParts(body);
    case 'numbers':
      return numberParts(body);
    case 'spot':
      return spotParts(body);
    case 'words':
      return wordsParts(body);
    case 'point':
      return undefined;
  }
}

type Of<Form extends WrittenBody['form']> = Extract<WrittenBody, { form: Form }>;

function choiceParts(body: Of<'choice'> | Of<'several'>, right: readonly string[]): Parts {
  const single = body.form === 'choice';
  const wrong = body.options.filter(({ id }) => !right.includes(id));
  const mapping = xml`<qti-mapping default-value="0" lower-bound="0">${right.map((id) => entry(id, 1))}${wrong.map(({ id }) => entry(id, -1))}</qti-mapping>`;
  return {
    declarations: [declaration(single ? 'single' : 'multiple', 'identifier', right, single ? undefined : mapping)],
    interaction: xml`<qti-choice-interaction response-identifier="RESPONSE" shuffle="${body.shuffle}" max-choices="${single ? 1 : 0}">${body.options.map(
      ({ id, text, because }) =>
        xml`<qti-simple-choice identifier="${identifierOf(id)}">${new Xml(inlineXhtmlOf(text))}${because ? feedback(id, because) : undefined}</qti-simple-choice>`,
    )}</qti-choice-interaction>`,
    processing: template(single ? MATCH_CORRECT : MAP_RESPONSE),
  };
}

function entry(key: string, value: number): Xml {
  return xml`<qti-map-entry map-key="${identifierOf(key)}" mapped-value="${value}"/>`;
}

function feedback(id: string, because: string): Xml {
  return xml`<qti-feedback-inline outcome-identifier="RESPONSE" identifier="${identifierOf(id)}" show-hide="show">${because}</qti-feedback-inline>`;
}

function orderParts({ items }: Of<'order'>): Parts {
  return {
    declarations: [
      declaration(
        'ordered',
        'identifier',
        items.map(({ id }) => id),
      ),
    ],
    interaction: xml`<qti-order-interaction response-identifier="RESPONSE" shuffle="true">${items.map(
      ({ id, text, because }) =>
        xml`<qti-simple-choice identifier="${identifierOf(id)}">${new Xml(inlineXhtmlOf(text))}${because ? feedback(id, because) : undefined}</qti-simple-choice>`,
    )}</qti-order-interaction>`,
    processing: template(MATCH_CORRECT),
  };
}

function numberParts({ variables, formula, unit, tolerance }: Of<'numbers'>): Parts {
  const names = variables.map(({ name }) => name);
  const expression = formulaXml(formula, names);
  const mode = tolerance.kind === 'absolute' ? 'absolute' : 'relative';
  const setKey =
    expression && xml`<qti-set-correct-response identifier="RESPONSE">${expression}</qti-set-correct-response>`;
  const draws = variables.map(
    ({ name, from, to, step }) =>
      xml`<qti-set-template-value identifier="${name}"><qti-sum><qti-base-value base-type="float">${from}</qti-base-value><qti-product><qti-random-integer min="0" max="${Math.floor((to - from) / step + 1e-9)}"/><qti-base-value base-type="float">${step}</qti-base-value></qti-product></qti-sum></qti-set-template-value>`,
  );
  const templates = names.map(
    (name) => xml`<qti-template-declaration identifier="${name}" cardinality="single" base-type="float"/>`,
  );
  return {
    declarations: [
      declaration('single', 'float', []),
      ...templates,
      xml`<qti-template-processing>${draws}${setKey}</qti-template-processing>`,
    ],
    interaction: xml`<p><qti-text-entry-interaction response-identifier="RESPONSE" expected-length="12"/>${unit === undefined ? '' : ` ${unit}`}</p>`,
    processing: xml`<qti-response-processing><qti-response-condition><qti-response-if><qti-equal tolerance-mode="${mode}" tolerance="${tolerance.amount} ${tolerance.amount}"><qti-variable identifier="RESPONSE"/><qti-correct identifier="RESPONSE"/></qti-equal><qti-set-outcome-value identifier="SCORE"><qti-base-value base-type="float">1</qti-base-value></qti-set-outcome-value></qti-response-if></qti-response-condition></qti-response-processing>`,
    losses: expression ? [] : ['formula-not-expressed'],
  };
}

function spotParts({ picture, areas, right }: Of<'spot'>): Parts {
  const coords = ({ left, top, right: end, bottom }: Of<'spot'>['areas'][number]) =>
    [left * picture.width, top * picture.height, end * picture.width, bottom * picture.height]
      .map(Math.round)
      .join(',');
  // Any of several places is right: each is worth everything.
  const mapping = xml`<qti-mapping default-value="0">${right.map((id) => entry(id, 1))}</qti-mapping>`;
  return {
    declarations: [declaration('single', 'identifier', right.slice(0, 1), mapping)],
    interaction: xml`<qti-hotspot-interaction response-identifier="RESPONSE" max-choices="1"><img src="${pictureHref(picture.id)}" width="${picture.width}" height="${picture.height}" alt="${picture.alt}"/>${areas.map(
      (area) =>
        xml`<qti-hotspot-choice identifier="${identifierOf(area.id)}" shape="rect" coords="${coords(area)}" hotspot-label="${area.name}"/>`,
    )}</qti-hotspot-interaction>`,
    processing: template(MAP_RESPONSE),
  };
}

function wordsParts({ most, model, guidance, steps }: Of<'words'>): Parts {
  return {
    declarations: [declaration('single', 'string', [])],
    interaction: xml`<qti-rubric-block use="scoring" view="scorer"><qti-content-body>${new Xml(xhtmlOf(model))}<div>${new Xml(xhtmlOf(guidance))}</div><p>0–${steps}</p></qti-content-body></qti-rubric-block><qti-extended-text-interaction response-identifier="RESPONSE" expected-length="${most}"/>`,
    processing: xml``,
  };
}

function declaration(cardinality: string, type: string, right: readonly string[], mapping?: Xml): Xml {
  const correct =
    right.length > 0
      ? xml`<qti-correct-response>${right.map((id) => xml`<qti-value>${identifierOf(id)}</qti-value>`)}</qti-correct-response>`
      : undefined;
  return xml`<qti-response-declaration identifier="RESPONSE" cardinality="${cardinality}" base-type="${type}">${correct}${mapping}</qti-response-declaration>
`;
}

function template(address: string): Xml {
  return xml`<qti-response-processing template="${address}"/>`;
}
