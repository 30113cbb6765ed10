import { loadCatalogue } from '@/content/load';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import type { Catalogue } from '@/lib/catalogue';
import { type Certificate, certify } from '@/lib/diagnosis/certificate';
import { CASE_USAGE, caseOptions, caseSpecFrom } from './case-options';
import { type CertifiedFields, printCase } from './print-case';
import { known, readOptions, runCommand } from './usage-error';

const USAGE = `npm run -s case -- --list rigs|causes|checks [--json]
npm run -s case -- ${CASE_USAGE} [--json]`;

const lists = ['rigs', 'causes', 'checks'] as const;

function main(): string {
  const values = readOptions({
    list: { type: 'string' },
    ...caseOptions,
    json: { type: 'boolean', default: false },
  });
  const catalogue = loadCatalogue();
  if (values.list !== undefined) return list(catalogue, known(values.list, lists, 'list'), values.json);
  const theCase = caseFromSeed(caseSpecFrom(values, catalogue, USAGE), catalogue);
  const described = {
    ...describeCase(theCase, catalogue),
    seed: values.seed ?? theCase.spec.seed,
    ...describeCertificate(certify(theCase, catalogue)),
  };
  return values.json ? JSON.stringify(described, null, 2) : printCase(described, catalogue);
}

/** What the expert makes of a case, without the beliefs on the way. */
function describeCertificate({ settled, right, route, features, difficulty }: Certificate): CertifiedFields {
  const expertRoute = route.steps.map(({ areas: _, ...step }) => step);
  return { difficulty, features, expertRoute, certificate: { settled, right, minutes: route.minutes } };
}

function list(catalogue: Catalogue, kind: (typeof lists)[number], json: boolean): string {
  const items = listed(catalogue)[kind];
  return json ? JSON.stringify(items, null, 2) : items.map(({ id, name }) => `${id.padEnd(28)}${name}`).join('\n');
}

/** What can be named on the command line, with what it goes together with. */
function listed({ rigs, causes, checks }: Catalogue) {
  return {
    rigs: [...rigs.values()].map(({ id, text, nodes, elements, ports }) => ({
      id,
      name: text.en.name,
      nodes: nodes.map((node) => node.id),
      elements: elements.map((element) => element.id),
      ports: ports.map((port) => port.id),
    })),
    causes: [...causes.values()].map(({ id, text, area, element, repairs }) => ({
      id,
      name: text.en.name,
      area,
      element,
      repairs: repairs.map((repair) => repair.id),
    })),
    checks: [...checks.values()].map(({ id, text, ports, conditions, instruments, minutes }) => ({
      id,
      name: text.en.name,
      ports,
      conditions,
      instruments,
      minutes,
    })),
  };
}

runCommand(main);
