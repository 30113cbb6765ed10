import type { Catalogue } from '../../../catalogue';
import type { Check } from '../../../checks/check';
import { findLimit } from '../../../checks/limit';
import type { RandomStream } from '../../../random';
import type { LimitLine, Rig } from '../../../rig/rig';
import { checksOn } from '../../shared/checks-on';
import { isNumber } from '../../shared/limited';
import { shuffled } from '../../shared/shuffled-options';
import type { Taken } from './draw-taken';

/** A line of something else in the same condition. */
export interface Neighbour {
  check: Check;
  line: LimitLine;
}

/** Another quantity of the check, and two other checks, in the same unit where there are such. */
export function neighboursOf(rig: Rig, taken: Taken, catalogue: Catalogue, stream: RandomStream): Neighbour[] {
  const { check, condition, line, elsewhere } = taken;
  const unit = (line ?? elsewhere[0]?.line)?.unit;
  const all = shuffled(
    stream,
    checksOn(rig, catalogue).flatMap((other) =>
      other.quantities.filter(isNumber).flatMap(({ id }) => {
        const found = findLimit(rig, other.id, condition, id);
        return found && found !== line ? [{ check: other, line: found }] : [];
      }),
    ),
  );
  const others = all.filter((one) => one.check !== check);
  const alike = others.filter((one) => one.line.unit === unit);
  return [...all.filter((one) => one.check === check).slice(0, 1), ...(alike.length > 0 ? alike : others).slice(0, 2)];
}
