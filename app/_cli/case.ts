import { parseArgs } from 'node:util';
import { distance } from 'fastest-levenshtein';
import { loadCatalogue } from '@/content/load';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import type { Catalogue } from '@/lib/catalogue';
import { appliesTo } from '@/lib/faults/apply-cause';
import { printCase } from './print-case';

const USAGE = `npm run -s case -- --list rigs|causes|checks [--json]
npm run -s case -- --seed WORD [--rig ID] [--cause ID --severity 0…1 [--also ID --also-severity 0…1] | --hardest] [--json]`;

/** Refused input: one line on stderr, exit code 2. */
class UsageError extends Error {}

/** Where no rig is named. */
const USUAL_RIG = 'tern-13';

const lists = ['rigs', 'causes', 'checks'] as const;

function main(): string {
  const { values } = readArguments();
  const catalogue = loadCatalogue();
  if (values.list !== undefined) return list(catalogue, known(values.list, lists, 'list'), values.json);
  if (values.seed === undefined) throw new UsageError(`Nothing to do. ${USAGE}`);
  const rig = known(values.rig ?? USUAL_RIG, [...catalogue.rigs.keys()], 'rig');
  const chosen = chosenCause(catalogue, rig, 'cause', values.cause, values.severity);
  const also = chosenCause(catalogue, rig, 'also', values.also, values['also-severity']);
  if (also && !chosen) throw new UsageError('--also needs --cause');
  if (values.hardest && chosen) throw new UsageError('--hardest draws the causes: leave --cause out');
  const spec = {
    rig,
    seed: seedFromWord(values.seed),
    ...(values.hardest && { hardest: true as const }),
    ...(chosen && { chosen }),
    ...(also && { also }),
  };
  const theCase = caseFromSeed(spec, catalogue);
  const described = { ...describeCase(theCase, catalogue), seed: values.seed };
  return values.json ? JSON.stringify(described, null, 2) : printCase(described, catalogue);
}

function readArguments() {
  try {
    return parseArgs({
      options: {
        list: { type: 'string' },
        seed: { type: 'string' },
        rig: { type: 'string' },
        cause: { type: 'string' },
        severity: { type: 'string' },
        also: { type: 'string' },
        'also-severity': { type: 'string' },
        hardest: { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
      },
    });
  } catch (error) {
    throw new UsageError((error as Error).message.split('\n')[0]);
  }
}

function chosenCause(
  catalogue: Catalogue,
  rigId: string,
  option: 'cause' | 'also',
  causeId: string | undefined,
  severity: string | undefined,
) {
  const measure = option === 'cause' ? '--severity' : '--also-severity';
  if (causeId === undefined) {
    if (severity !== undefined) throw new UsageError(`${measure} needs --${option}`);
    return undefined;
  }
  const cause = known(causeId, causesOn(catalogue, rigId), 'cause');
  const healthy = catalogue.causes.get(cause)?.effects.length === 0;
  if (severity === undefined && !healthy) throw new UsageError(`--${option} needs ${measure} 0…1`);
  return { cause, severity: thousandths(severity ?? '0', measure) };
}

function causesOn({ rigs, causes }: Catalogue, rigId: string): string[] {
  const rig = rigs.get(rigId);
  return [...causes.values()].filter((cause) => rig && appliesTo(rig, cause)).map(({ id }) => id);
}

/** Case codes carry severity in thousandths, so the command takes no finer ones. */
function thousandths(text: string, option: string): number {
  const severity = Math.round(Number(text) * 1000);
  if (!/^\d*\.?\d{1,3}$/.test(text) || severity > 1000) {
    throw new UsageError(`${option}: expected 0…1 with at most three decimals, got ${text}`);
  }
  return severity;
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

function known<T extends string>(id: string, ids: readonly T[], kind: string): T {
  const found = ids.find((candidate) => candidate === id);
  if (found !== undefined) return found;
  const near = [...ids].sort((a, b) => distance(id, a) - distance(id, b)).slice(0, 3);
  throw new UsageError(`Unknown ${kind} ${id}. Near: ${near.join(', ')}`);
}

try {
  process.stdout.write(`${main()}\n`);
} catch (error) {
  if (!(error instanceof UsageError)) throw error;
  process.stderr.write(`${error.message.replaceAll('\n', '; ')}\n`);
  process.exitCode = 2;
}
