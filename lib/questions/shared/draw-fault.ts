import type { Catalogue } from '../../catalogue';
import type { RandomStream } from '../../random';
import { topicsOf } from '../../topics/topics-of';
import { causesOn, type Fault, severitiesOf } from './broken-day';
import type { RigDay } from './rig-day';

/** Something wrong with a rig on its day, on a topic where one is named; undefined where nothing of it can happen there. */
export function drawFault(
  stream: (name: string) => RandomStream,
  day: RigDay,
  grid: readonly number[],
  catalogue: Catalogue,
  topic?: string,
): Fault | undefined {
  const causes = causesOn(day, catalogue).filter(
    (cause) => topic === undefined || topicsOf(cause, catalogue).some(({ id }) => id === topic),
  );
  if (causes.length === 0) return undefined;
  const cause = stream('cause').pick(causes);
  return { cause, severity: stream('severity').pick(severitiesOf(cause, grid)) };
}
