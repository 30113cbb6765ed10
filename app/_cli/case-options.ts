import { type CaseSpec, seedFromWord } from '@/lib/cases/case-code';
import type { Catalogue } from '@/lib/catalogue';
import { appliesTo } from '@/lib/faults/apply-cause';
import { known, UsageError } from './usage-error';

/** Where no rig is named. */
const USUAL_RIG = 'tern-13';

/** Options that say which case, the same for every command that takes one. */
export const caseOptions = {
  seed: { type: 'string' },
  rig: { type: 'string' },
  cause: { type: 'string' },
  severity: { type: 'string' },
  also: { type: 'string' },
  'also-severity': { type: 'string' },
  hardest: { type: 'boolean', default: false },
} as const;

export const CASE_USAGE =
  '--seed WORD [--rig ID] [--cause ID --severity 0…1 [--also ID --also-severity 0…1] | --hardest]';

interface CaseValues {
  seed?: string | undefined;
  rig?: string | undefined;
  cause?: string | undefined;
  severity?: string | undefined;
  also?: string | undefined;
  'also-severity'?: string | undefined;
  hardest: boolean;
}

/** @param usage  Said where there is no seed. */
export function caseSpecFrom(values: CaseValues, catalogue: Catalogue, usage: string): CaseSpec {
  if (values.seed === undefined) throw new UsageError(`Nothing to do. ${usage}`);
  const rig = known(values.rig ?? USUAL_RIG, [...catalogue.rigs.keys()], 'rig');
  const chosen = chosenCause(catalogue, rig, 'cause', values.cause, values.severity);
  const also = chosenCause(catalogue, rig, 'also', values.also, values['also-severity']);
  if (also && !chosen) throw new UsageError('--also needs --cause');
  if (values.hardest && chosen) throw new UsageError('--hardest draws the causes: leave --cause out');
  return {
    rig,
    seed: seedFromWord(values.seed),
    ...(values.hardest && { hardest: true as const }),
    ...(chosen && { chosen }),
    ...(also && { also }),
  };
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
