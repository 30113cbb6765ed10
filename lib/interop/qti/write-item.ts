import type { WrittenBody, WrittenQuestion } from '../../questions/written/written-question';
import { ITEM_NAMESPACE } from './terms';
import { fixedKey, printedBy, templateXml } from './write-template';
import { inlineXhtmlOf, xhtmlOf } from './write-xhtml';
import { type Xml, xml } from './xml';

/** Where a picture lies in the package, seen from an item. */
export function pictureHref(id: string): string {
  return `../pictures/${id}.webp`;
}

/** Identifiers of the standard begin with a letter or a line. */
export function identifierOf(id: string): string {
  return /^[a-z]/.test(id) ? id : `_${id}`;
}

type Of<Form extends WrittenBody['form']> = Extract<WrittenBody, { form: Form }>;

/** The parts of an item that a form fills. */
interface Parts {
  response: Xml;
  template?: Xml;
  interaction: Xml;
  /** Sets the score; none where a person does. */
  scoring?: Xml;
  most: number;
  /** What is said of each option. */
  because?: readonly { id: string; because?: string | undefined }[];
}

/**
 * A written question as an assessment item; undefined where the standard has no counterpart to its form.
 *
 * @source 1EdTech QTI 3.0: response declarations, outcome declarations, template declarations and processing, item body,
 *   response processing, modal feedback, in this order.
 */
export function writeItem(identifier: string, question: WrittenQuestion): string | undefined {
  const { title, stem, explanation, picture, body } = question;
  const parts = partsOf(body);
  if (!parts) return undefined;
  const { response, template, interaction, most } = parts;
  const printed = body.form === 'numbers' && template ? printedBy(body) : new Map();
  const said = (parts.because ?? []).filter(({ because }) => because);
  return xml`<?xml version="1.0" encoding="UTF-8"?>
<qti-assessment-item xmlns="${ITEM_NAMESPACE}" identifier="${identifier}" title="${title}" adaptive="false" time-dependent="false" xml:lang="en">
${response}
${score(most, parts.scoring === undefined)}${outcome('EXPLANATION')}${said.length > 0 ? outcome('FEEDBACK', body.form === 'several' ? 'multiple' : 'single') : undefined}${template}<qti-item-body>
<div>${xhtmlOf(stem, printed)}</div>
${
  picture &&
  xml`<p><img src="${pictureHref(picture.id)}" alt="${picture.alt}" width="${picture.width}" height="${picture.height}"/></p>
`
}${interaction}
</qti-item-body>
<qti-response-processing>${parts.scoring}${said.length > 0 ? set('FEEDBACK', RESPONSE) : undefined}${set('EXPLANATION', value('identifier', 'explanation'))}</qti-response-processing>
${said.map(({ id, because = '' }) => modal('FEEDBACK', identifierOf(id), xhtmlOf(because)))}${modal('EXPLANATION', 'explanation', xhtmlOf(explanation, printed))}</qti-assessment-item>
`.text;
}

function partsOf(body: WrittenBody): Parts | undefined {
  switch (body.form) {
    case 'choice':
      return choiceParts(body);
    case 'several':
      return severalParts(body);
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

function choiceParts({ options, right, shuffle }: Of<'choice'>): Parts {
  return {
    response: responseOf('single', 'identifier', [identifierOf(right)]),
    interaction: xml`<qti-choice-interaction response-identifier="RESPONSE" shuffle="${shuffle}" max-choices="1">${options.map(optionXml)}</qti-choice-interaction>`,
    scoring: oneWhere(RIGHT),
    most: 1,
    because: options,
  };
}

/** Each right one counts for, each wrong one against, never below nothing: as ours are marked. */
function severalParts({ options, right, shuffle }: Of<'several'>): Parts {
  const ids = [...new Set(right)].map(identifierOf);
  const entries = options.map(({ id }) => entry(id, ids.includes(identifierOf(id)) ? 1 : -1));
  return {
    response: responseOf(
      'multiple',
      'identifier',
      ids,
      xml`<qti-mapping default-value="0" lower-bound="0" upper-bound="${ids.length}">${entries}</qti-mapping>`,
    ),
    interaction: xml`<qti-choice-interaction response-identifier="RESPONSE" shuffle="${shuffle}" max-choices="0">${options.map(optionXml)}</qti-choice-interaction>`,
    scoring: MAPPED,
    most: ids.length,
    because: options,
  };
}

function orderParts({ items }: Of<'order'>): Parts {
  return {
    response: responseOf(
      'ordered',
      'identifier',
      items.map(({ id }) => identifierOf(id)),
    ),
    interaction: xml`<qti-order-interaction response-identifier="RESPONSE" shuffle="true">${items.map(optionXml)}</qti-order-interaction>`,
    scoring: oneWhere(RIGHT),
    most: 1,
  };
}

function numberParts(body: Of<'numbers'>): Parts {
  const key = fixedKey(body);
  return {
    response: responseOf('single', 'float', key === undefined ? [] : [key]),
    ...(key === undefined && { template: templateXml(body) }),
    interaction: xml`<p><qti-text-entry-interaction response-identifier="RESPONSE" expected-length="12"/>${body.unit && ` ${body.unit}`}</p>`,
    scoring: oneWhere(nearKey(body)),
    most: 1,
  };
}

/** The key as it is shown is never wrong, however narrow the tolerance is. */
function nearKey({ tolerance: { kind, amount }, decimals }: Of<'numbers'>): Xml {
  const half = 10 ** -decimals / 2;
  const equal = (mode: string, by: number) =>
    xml`<qti-equal tolerance-mode="${mode}" tolerance="${by} ${by}">${RESPONSE}<qti-correct identifier="RESPONSE"/></qti-equal>`;
  if (kind === 'absolute') return equal('absolute', Math.max(amount, half));
  return xml`<qti-or>${equal('relative', amount)}${equal('absolute', half)}</qti-or>`;
}

function spotParts({ picture, areas, right }: Of<'spot'>): Parts {
  const ids = [...new Set(right)];
  const coords = ({ left, top, right: end, bottom }: Of<'spot'>['areas'][number]) =>
    [left * picture.width, top * picture.height, end * picture.width, bottom * picture.height]
      .map(Math.round)
      .join(',');
  const choices = areas.map(
    (area) =>
      xml`<qti-hotspot-choice identifier="${identifierOf(area.id)}" shape="rect" coords="${coords(area)}" hotspot-label="${area.name}"/>`,
  );
  // Any of several places is right: each is worth everything.
  const mapping = xml`<qti-mapping default-value="0">${ids.map((id) => entry(id, 1))}</qti-mapping>`;
  return {
    response: responseOf('single', 'identifier', ids.slice(0, 1).map(identifierOf), mapping),
    interaction: xml`<qti-hotspot-interaction response-identifier="RESPONSE" max-choices="1"><img src="${pictureHref(picture.id)}" alt="${picture.alt}" width="${picture.width}" height="${picture.height}"/>${choices}</qti-hotspot-interaction>`,
    scoring: MAPPED,
    most: 1,
  };
}

function wordsParts({ most, model, guidance, steps }: Of<'words'>): Parts {
  return {
    response: responseOf('single', 'string', []),
    interaction: xml`${rubric(model)}${guidance === '' ? undefined : rubric(guidance)}<qti-extended-text-interaction response-identifier="RESPONSE" expected-length="${most}"/>`,
    most: steps,
  };
}

/** For whoever marks, and nobody else. */
function rubric(markdown: string): Xml {
  return xml`<qti-rubric-block use="scoring" view="scorer"><qti-content-body>${xhtmlOf(markdown)}</qti-content-body></qti-rubric-block>
`;
}

function optionXml({ id, text }: { id: string; text: string }): Xml {
  return xml`<qti-simple-choice identifier="${identifierOf(id)}">${inlineXhtmlOf(text)}</qti-simple-choice>
`;
}

function responseOf(cardinality: string, type: string, right: readonly string[], mapping?: Xml): Xml {
  const values = right.map((one) => xml`<qti-value>${one}</qti-value>`);
  const correct = right.length > 0 ? xml`<qti-correct-response>${values}</qti-correct-response>` : undefined;
  return xml`<qti-response-declaration identifier="RESPONSE" cardinality="${cardinality}" base-type="${type}">${correct}${mapping}</qti-response-declaration>`;
}

function entry(id: string, worth: number): Xml {
  return xml`<qti-map-entry map-key="${identifierOf(id)}" mapped-value="${worth}"/>`;
}

const RESPONSE = xml`<qti-variable identifier="RESPONSE"/>`;
const RIGHT = xml`<qti-match>${RESPONSE}<qti-correct identifier="RESPONSE"/></qti-match>`;
const MAPPED = set('SCORE', xml`<qti-map-response identifier="RESPONSE"/>`);

function oneWhere(condition: Xml): Xml {
  return xml`<qti-response-condition><qti-response-if>${condition}${set('SCORE', value('float', '1'))}</qti-response-if></qti-response-condition>`;
}

function set(outcomeIdentifier: string, expression: Xml): Xml {
  return xml`<qti-set-outcome-value identifier="${outcomeIdentifier}">${expression}</qti-set-outcome-value>`;
}

function value(type: string, written: string): Xml {
  return xml`<qti-base-value base-type="${type}">${written}</qti-base-value>`;
}

function score(most: number, byHand: boolean): Xml {
  const marker = byHand ? xml` external-scored="human"` : undefined;
  return xml`<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float" normal-minimum="0" normal-maximum="${most}"${marker}><qti-default-value><qti-value>0</qti-value></qti-default-value></qti-outcome-declaration>
<qti-outcome-declaration identifier="MAXSCORE" cardinality="single" base-type="float"><qti-default-value><qti-value>${most}</qti-value></qti-default-value></qti-outcome-declaration>
`;
}

function outcome(identifier: string, cardinality = 'single'): Xml {
  return xml`<qti-outcome-declaration identifier="${identifier}" cardinality="${cardinality}" base-type="identifier"/>
`;
}

function modal(outcomeIdentifier: string, identifier: string, content: Xml): Xml {
  return xml`<qti-modal-feedback outcome-identifier="${outcomeIdentifier}" identifier="${identifier}" show-hide="show"><qti-content-body>${content}</qti-content-body></qti-modal-feedback>
`;
}
