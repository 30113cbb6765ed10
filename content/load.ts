import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { z } from 'zod';
import type { Catalogue } from '@/lib/catalogue';
import { checkReferences } from '@/lib/check-references';
import { checkSchema } from '@/lib/checks/check';
import { restoringSchema } from '@/lib/checks/restoring';
import { causeSchema } from '@/lib/faults/cause';
import { fuelSchema } from '@/lib/fluids/fuel';
import { gaugeSchema } from '@/lib/gauges/gauge';
import { rubricSchema } from '@/lib/grading/rubric';
import { checkQuestions } from '@/lib/questions/check-questions';
import { type QuestionContent, questionContentSchema } from '@/lib/questions/question-content';
import { characteristicsSchema } from '@/lib/readiness/characteristics-of-scheme';
import { checkProfiles } from '@/lib/readiness/check-profiles';
import { checkSchemes } from '@/lib/readiness/check-schemes';
import { roleProfileSchema } from '@/lib/readiness/profile';
import { schemeSchema } from '@/lib/readiness/scheme';
import { rigSchema } from '@/lib/rig/rig';
import { blueprintSchema } from '@/lib/sets/blueprint';
import { checkSets } from '@/lib/sets/check-sets';
import { readySetSchema } from '@/lib/sets/ready-set';
import { codeNamesSchema } from '@/lib/symptoms/code-names';
import { topicSchema } from '@/lib/topics/topic';

/** The folder that holds the content, from the place where every command of the project is run. */
const CONTENT = join(process.cwd(), 'content');

/** Content that does not load. Says which file, where in it and what was expected. */
export class ContentError extends Error {
  override name = 'ContentError';
}

/** Reads, validates and cross-checks all content. @throws ContentError naming file, path and expectation. */
export function loadCatalogue(folder = CONTENT): Catalogue {
  const hash = createHash('sha256');
  const questionHash = createHash('sha256');
  const catalogue: Catalogue = {
    rigs: loadFolder(folder, 'rigs', rigSchema, hash),
    causes: loadFolder(folder, 'causes', causeSchema, hash),
    checks: loadFolder(folder, 'checks', checkSchema, hash),
    gauges: loadFolder(folder, 'gauges', gaugeSchema, hash),
    fuels: loadFolder(folder, 'fuels', fuelSchema, hash),
    topics: loadFolder(folder, 'topics', topicSchema),
    codeNames: only('codes', loadFolder(folder, 'codes', codeNamesSchema, hash)),
    restoring: byId(only('restoring', loadFolder(folder, 'restoring', restoringSchema)).steps),
    rubrics: loadFolder(folder, 'rubrics', rubricSchema),
    readySets: loadFolder(folder, 'sets', readySetSchema),
    blueprints: loadFolder(folder, 'blueprints', blueprintSchema),
    profiles: loadFolder(folder, 'profiles', roleProfileSchema),
    schemes: loadFolder(folder, 'schemes', schemeSchema),
    characteristics: loadFolder(folder, 'characteristics', characteristicsSchema),
    questions: loadFolder<QuestionContent>(folder, 'questions', questionContentSchema, questionHash),
    contentHash: '',
    questionHash: '',
  };
  const broken = [
    ...checkReferences(catalogue),
    ...checkQuestions(catalogue),
    ...checkSets(catalogue),
    ...checkProfiles(catalogue),
    ...checkSchemes(catalogue),
  ];
  if (broken.length > 0) throw new ContentError(broken.join('\n'));
  const contentHash = hash.digest('hex');
  return { ...catalogue, contentHash, questionHash: questionHash.update(contentHash).digest('hex') };
}

function only<T>(name: string, items: ReadonlyMap<string, T>): T {
  const [item] = items.values();
  if (item === undefined) throw new ContentError(`content/${name}: expected one file, got none`);
  return item;
}

function byId<T extends { id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]));
}

type Hash = ReturnType<typeof createHash>;

/** One item a file, named by its id, in the order of the ids. Without `hash` for what moves no reading. */
function loadFolder<T extends { id: string }>(
  root: string,
  name: string,
  schema: z.ZodType<T>,
  hash?: Hash,
): Map<T['id'], T> {
  const files = readdirSync(join(root, name)).filter((file) => file.endsWith('.json'));
  const items = files.sort().map((file) => {
    const path = `content/${name}/${file}`;
    const text = readFileSync(join(root, name, file), 'utf8');
    const item = parseItem(path, text, schema);
    if (`${item.id}.json` !== file)
      throw new ContentError(`${path}: id: expected ${file.replace('.json', '')}, got ${item.id}`);
    // Hash what was parsed, so that line ends and indentation do not make another version.
    hash?.update(`${path}\u0000${JSON.stringify(item)}\u0000`);
    return [item.id, item] as [T['id'], T];
  });
  return new Map(items);
}

function parseItem<T>(path: string, text: string, schema: z.ZodType<T>): T {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    throw new ContentError(`${path}: not JSON: ${(error as Error).message}`, { cause: error });
  }
  const parsed = schema.safeParse(raw);
  if (parsed.success) return parsed.data;
  const problems = parsed.error.issues.map(
    (issue) => `${path}: ${issue.path.join('.') || 'top level'}: ${issue.message}`,
  );
  throw new ContentError(problems.join('\n'));
}
