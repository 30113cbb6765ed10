import { type Draw, defineKind } from '../kind';
import { drawAgain } from '../shared/draw-again';
import { failureMode } from './read-code/failure-mode';
import { meaning } from './read-code/meaning';
import { possible } from './read-code/possible';
import { proof } from './read-code/proof';
import { type ReadCodeRanges, readCodeRanges } from './read-code/ranges';
import { specialBytes } from './read-code/special-bytes';
import { troubleBytes } from './read-code/trouble-bytes';
import { ELECTRICAL, REASONING } from './read-code/words';

type Form = ReadCodeRanges['forms'][number];

const make = {
  meaning,
  'failure-mode': failureMode,
  possible,
  proof,
  'trouble-bytes': troubleBytes,
  'special-bytes': specialBytes,
} as const satisfies Record<Form, (draw: Draw<ReadCodeRanges>) => unknown>;

/** Which forms there are of a question that is on a part of the trade, and on what a code proves. */
const onParts: readonly Form[] = ['meaning', 'possible', 'proof'];
const onReasoning: readonly Form[] = ['possible', 'proof'];

/** A trouble code or the bytes of the bus: what they say, and what they do not prove. */
export const readCode = defineKind({
  id: 'read-code',
  ranges: readCodeRanges,
  topics: [
    ELECTRICAL,
    REASONING,
    'suction-tank-and-air',
    'priming-and-lift-pump',
    'low-pressure-supply-and-regulation',
    'filtration',
    'metering-and-rail-control',
    'high-pressure-and-leakage',
    'returns-and-temperature',
    'fuel-quality',
  ],
  make(draw) {
    const forms = formsOn(draw.topic, draw.ranges.forms);
    return drawAgain(draw.stream, (stream) => make[stream('form').pick(forms)]({ ...draw, stream }));
  },
});

function formsOn(topic: string | undefined, forms: readonly Form[]): readonly Form[] {
  if (topic === undefined || topic === ELECTRICAL) return forms;
  const fitting = topic === REASONING ? onReasoning : onParts;
  return forms.filter((form) => fitting.includes(form));
}
