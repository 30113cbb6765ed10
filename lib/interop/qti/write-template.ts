import { evaluateFormula, parseFormula } from '../../questions/written/formula';
import { ANSWER } from '../../questions/written/placeholders';
import type { WrittenBody } from '../../questions/written/written-question';
import { formulaXml, variableIdentifier } from './write-formula';
import type { Printed } from './write-xhtml';
import { type Xml, xml } from './xml';

type Numbers = Extract<WrittenBody, { form: 'numbers' }>;

/** What the answer is called in an item. */
const KEY = 'ANSWER';

/** How the numbers of a question are printed where their names stand in braces. */
export function printedBy({ variables, decimals }: Numbers): Printed {
  return new Map([
    ...variables.map(
      ({ name, from, step }) =>
        [
          name,
          { identifier: variableIdentifier(name), decimals: Math.max(decimalsOf(from), decimalsOf(step)) },
        ] as const,
    ),
    [ANSWER, { identifier: KEY, decimals }] as const,
  ]);
}

/** Declarations of the numbers and of the key, and how they come about. */
export function templateXml({ variables, formula, decimals }: Numbers): Xml {
  const names = variables.map(({ name }) => name);
  const declared = [...names.map(variableIdentifier), KEY].map(
    (identifier) => xml`<qti-template-declaration identifier="${identifier}" cardinality="single" base-type="float"/>
`,
  );
  const key = xml`<qti-round-to rounding-mode="decimalPlaces" figures="${decimals}">${formulaXml(formula, names)}</qti-round-to>`;
  return xml`${declared}<qti-template-processing>${variables.map(drawn)}${set(KEY, key)}<qti-set-correct-response identifier="RESPONSE"><qti-variable identifier="${KEY}"/></qti-set-correct-response></qti-template-processing>
`;
}

/** The key of a question in which nothing is drawn, as it is shown. */
export function fixedKey({ variables, formula, decimals }: Numbers): string | undefined {
  if (variables.length > 0) return undefined;
  const parsed = parseFormula(formula, []);
  return 'formula' in parsed ? evaluateFormula(parsed.formula, {})?.toFixed(decimals) : undefined;
}

/** On the grid of its steps, without the dust of binary fractions. */
function drawn({ name, from, to, step }: Numbers['variables'][number]): Xml {
  const steps = Math.floor((to - from) / step + 1e-9);
  return set(
    variableIdentifier(name),
    xml`<qti-round-to rounding-mode="significantFigures" figures="12"><qti-sum><qti-base-value base-type="float">${from}</qti-base-value><qti-product><qti-random-integer min="0" max="${steps}"/><qti-base-value base-type="float">${step}</qti-base-value></qti-product></qti-sum></qti-round-to>`,
  );
}

function set(identifier: string, value: Xml): Xml {
  return xml`<qti-set-template-value identifier="${identifier}">${value}</qti-set-template-value>`;
}

function decimalsOf(value: number): number {
  const text = String(value);
  return text.includes('e') ? 6 : Math.min(6, text.split('.')[1]?.length ?? 0);
}
