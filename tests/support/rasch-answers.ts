import { randomStream } from '@/lib/random';
import { type Responses, responsesFrom } from '@/lib/statistics/responses';

/** Answers as the Rasch model gives them: abilities normal, each answer left out with the chance `missing`. */
export function raschAnswers(
  seed: string,
  people: number,
  difficulties: readonly number[],
  { spread = 1, mean = 0, missing = 0 } = {},
): Responses {
  const random = randomStream(seed, 'rasch answers');
  const normal = () => Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
  const rows = Array.from({ length: people }, () => {
    const ability = mean + spread * normal();
    return difficulties.map((difficulty) => {
      const right = random.next() < 1 / (1 + Math.exp(difficulty - ability));
      return random.next() < missing ? undefined : Number(right);
    });
  });
  return responsesFrom(rows);
}
