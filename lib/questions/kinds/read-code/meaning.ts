import type { RandomStream } from '../../../random';
import type { TroubleCode } from '../../../symptoms/work-order';
import type { Draw, DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import type { ReadCodeRanges } from './ranges';
import { codeLine, ELECTRICAL } from './words';

/** What a code says, among three that are easily mistaken for it. */
export function meaning(draw: Draw<ReadCodeRanges>): DrawnBody | undefined {
  const { ranges, catalogue, stream, topic } = draw;
  const codes = [...catalogue.rigs.values()].flatMap((rig) => rig.codes);
  const fitting = codes.filter(
    ({ spn }) => topic === undefined || topic === ELECTRICAL || (ranges.topics[spn] ?? []).includes(topic),
  );
  if (fitting.length === 0) return undefined;
  const { spn, fmi } = stream('code').pick(fitting);
  const choices: Choice[] = [
    { line: says({ spn, fmi }) },
    ...distractors(stream('distractors'), { spn, fmi }, codes).map((code) => ({
      line: says(code),
      because: against(code, { spn, fmi }),
    })),
  ];
  if (choices.length < 4) return undefined;
  const { options, right, because } = shuffledOptions(stream('order'), choices);
  return {
    stem: [{ say: 'meaning-stem' }],
    figure: { figure: 'codes', codes: [{ spn, fmi }] },
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [codeLine({ spn, fmi }), { say: 'meaning-parts' }],
    topics: [ELECTRICAL, ...(ranges.topics[spn] ?? []).filter((id) => id !== ELECTRICAL)],
    features: { lookUp: 1 },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: 30,
  };
}

/** Two of the same parameter with another failure mode or the other way about, and one with neither. */
function distractors(stream: RandomStream, asked: TroubleCode, codes: readonly TroubleCode[]): TroubleCode[] {
  const others = shuffled(stream, codes);
  const mode = others.find(({ fmi }) => fmi !== asked.fmi)?.fmi;
  const parameter = others.find(({ spn }) => spn !== asked.spn)?.spn;
  if (mode === undefined || parameter === undefined) return [];
  return [
    { spn: asked.spn, fmi: mode },
    { spn: parameter, fmi: asked.fmi },
    { spn: parameter, fmi: mode },
  ];
}

function against(code: TroubleCode, asked: TroubleCode): Line {
  if (code.spn === asked.spn)
    return { say: 'meaning-other-mode', with: { fmi: String(code.fmi), asked: String(asked.fmi) } };
  if (code.fmi === asked.fmi)
    return { say: 'meaning-other-parameter', with: { spn: String(code.spn), asked: String(asked.spn) } };
  return { say: 'meaning-other-both', with: { spn: String(code.spn), fmi: String(code.fmi) } };
}

function says({ spn, fmi }: TroubleCode): Line {
  return {
    say: 'meaning-option',
    with: { parameter: { name: 'spn', id: String(spn) }, mode: { name: 'fmi', id: String(fmi) } },
  };
}
