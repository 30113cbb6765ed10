import { loadCatalogue } from '@/content/load';
import type { Catalogue } from '@/lib/catalogue';
import { kinds } from '@/lib/questions/kinds';
import { questionKindIds } from '@/lib/questions/question';
import { kindOf, questionFromSeed } from '@/lib/questions/question-from-seed';
import { describeQuestion, printQuestion } from './print-question';
import { known, readOptions, runCommand, UsageError } from './usage-error';

const USAGE = `npm run -s question -- --list kinds [--json]
npm run -s question -- --kind KIND --seed WORD [--rig ID] [--topic ID] [--json]`;

function main(): string {
  const values = readOptions({
    list: { type: 'string' },
    kind: { type: 'string' },
    seed: { type: 'string' },
    rig: { type: 'string' },
    topic: { type: 'string' },
    json: { type: 'boolean', default: false },
  });
  const catalogue = loadCatalogue();
  if (values.list !== undefined) {
    known(values.list, ['kinds'], 'list');
    return list(catalogue, values.json);
  }
  if (values.kind === undefined || values.seed === undefined) throw new UsageError(`Nothing to do. ${USAGE}`);
  const kind = known(values.kind, questionKindIds, 'kind');
  const { kind: made, content } = kindOf(kind, catalogue);
  const rigs = made.rigs?.(catalogue) ?? [...catalogue.rigs.keys()];
  const question = questionFromSeed(
    {
      kind,
      seed: values.seed,
      ...(values.rig !== undefined && { rig: known(values.rig, rigs, 'rig') }),
      ...(values.topic !== undefined && { topic: known(values.topic, made.topics, 'topic') }),
    },
    catalogue,
  );
  const described = describeQuestion(question, content, catalogue);
  return values.json ? JSON.stringify(described, null, 2) : printQuestion(described);
}

function list(catalogue: Catalogue, json: boolean): string {
  const items = [...kinds.values()].map(({ id, topics, rigs }) => {
    const { name, about } = kindOf(id, catalogue).content.text.en;
    return { id, name, about, topics, rigs: rigs?.(catalogue) ?? [...catalogue.rigs.keys()] };
  });
  return json ? JSON.stringify(items, null, 2) : items.map(({ id, name }) => `${id.padEnd(16)}${name}`).join('\n');
}

runCommand(main);
