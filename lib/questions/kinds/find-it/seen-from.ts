import { z } from 'zod';
import type { RandomStream } from '../../../random';
import type { Rig } from '../../../rig/rig';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { passedParts } from '../../shared/flow-path';
import { shuffledOptions } from '../../shared/shuffled-options';

/** Where somebody stands, and whether they look at the engine as the convention does: from the flywheel, forward. */
export const standSchema = z.strictObject({ id: z.string(), looks: z.enum(['forward', 'rearward']) });
export type Stand = z.infer<typeof standSchema>;

export const hands = ['left', 'right'] as const;
export const turns = ['clockwise', 'anticlockwise'] as const;

const SECONDS = 35;

/** From where somebody stands to what the convention calls it, of side and sense of rotation. */
export function seenFrom(
  stands: readonly Stand[],
  rig: Rig,
  stream: (name: string) => RandomStream,
): Omit<DrawnBody, 'topics'> {
  const stand = stream('stand').pick(stands);
  const [hand, turn] = [stream('hand').pick(hands), stream('turn').pick(turns)];
  const mirrored = stand.looks === 'rearward';
  const [side, sense] = mirrored ? [other(hands, hand), other(turns, turn)] : [hand, turn];
  const choices = hands.flatMap((one) =>
    turns.map((way) => ({
      line: { say: 'side-and-turn', with: { side: one, turn: way } },
      ...(one !== side || way !== sense ? { because: slip(one !== side, way !== sense, mirrored) } : {}),
    })),
  );
  const { options, right, because } = shuffledOptions(stream('options'), choices);
  const part = stream('part').pick(passedParts(rig).filter(({ kind }) => kind === 'gear-pump' || kind === 'filter'));
  const there = { line: { say: `from-${stand.id}` } };
  const seen = {
    stand: { line: { say: `stand-${stand.id}` } },
    hand,
    turn,
    part: { name: 'element' as const, id: part.id, of: rig.id },
  };
  return {
    stem: [{ say: 'stand-there', with: seen }, { say: 'ask-side' }],
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [
      { say: 'convention' },
      { say: mirrored ? 'mirrored' : 'same-way', with: { there, hand, turn, side, sense } },
      { say: 'standard-turn', with: { sense } },
    ],
    features: { naming: 0, lines: 0, ports: 0, mirror: Number(mirrored) },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: SECONDS,
  };
}

function other<T>(pair: readonly [T, T], one: T): T {
  return pair[0] === one ? pair[1] : pair[0];
}

/** Which of the two was turned round, or left as it was, when it should not have been. */
function slip(side: boolean, turn: boolean, mirrored: boolean): Line {
  const which = side && turn ? 'both' : side ? 'side' : 'turn';
  return { say: mirrored ? 'slip-not-mirrored' : 'slip-mirrored', with: { which } };
}
