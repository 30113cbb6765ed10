import { getTranslations } from 'next-intl/server';
import type { FieldFault } from '@/app/questions/draft-answer';
import type { FormulaFault } from '@/lib/questions/written/formula-tokens';
import type { IssueParams } from '@/lib/questions/written/written-question';
import type { Issue } from './parse-draft';

/** Says of each field what was expected there; one sentence a field, the first. */
export async function fieldFaults(issues: readonly Issue[]): Promise<FieldFault[]> {
  const say = await faultTeller();
  const faults = new Map<string, string>();
  for (const issue of issues) {
    const at = issue.path.join('.');
    if (!faults.has(at)) faults.set(at, say(issue));
  }
  return [...faults].map(([at, text]) => ({ at, text }));
}

/** Words for what can be wrong with a written question, wherever it came from. */
export async function faultTeller(): Promise<(issue: Issue) => string> {
  const t = await getTranslations('written.faults');
  const formulas = await getTranslations('written.formula');
  return (issue) => {
    switch (issue.code) {
      case 'invalid_type':
        if (issue.expected === 'number' || issue.expected === 'int') return t('number');
        return issue.path.at(-1) === 'right' ? t('no-right') : t('missing');
      case 'too_small':
        return tooSmall(issue);
      case 'too_big':
        return issue.origin === 'string'
          ? t('too-long', { most: Number(issue.maximum) })
          : t(isList(issue) ? 'too-many' : 'too-large', { most: Number(issue.maximum) });
      case 'invalid_format':
        return t(issue.path.at(-1) === 'name' ? 'name' : 'not-offered');
      case 'custom':
        return particular(issue.params as IssueParams | undefined);
      default:
        return t('not-offered');
    }
  };

  function tooSmall(issue: Extract<Issue, { code: 'too_small' }>): string {
    const least = Number(issue.minimum);
    if (issue.origin === 'string') return t('missing');
    if (isList(issue)) return issue.path.at(-1) === 'right' ? t('no-right') : t('too-few', { least });
    return t(issue.inclusive === false ? 'not-above' : 'too-small-number', { least });
  }

  function particular(params: IssueParams | undefined): string {
    if (!params) return t('not-offered');
    const { code, values } = params;
    if (code !== 'formula') return t(code, { ...values });
    return formulas(String(values.what) as FormulaFault['fault'], { at: Number(values.at), name: String(values.name) });
  }
}

function isList({ origin }: { origin: string }): boolean {
  return origin === 'array' || origin === 'set';
}
