import type { Catalogue } from '../../../catalogue';
import type { Rig } from '../../../rig/rig';
import type { Figure } from '../../figure';
import type { Line } from '../../line';
import { limitWords } from '../../shared/limit-words';
import type { Taken } from './draw-taken';
import { measuredWords } from './lines';
import type { Neighbour } from './neighbours';

/** The part of the limit sheet that the options are about, in its order, in the units that it is written in. */
export function sheetFor(
  { limits }: Rig,
  { check, quantity }: Taken,
  neighbours: readonly Neighbour[],
  { checks }: Pick<Catalogue, 'checks'>,
): Figure {
  const about = [`${check.id} ${quantity.id}`, ...neighbours.map(({ line }) => `${line.check} ${line.quantity}`)];
  const rows = limits.flatMap((line): Line[][] => {
    const found = checks.get(line.check);
    if (!found || !about.includes(`${line.check} ${line.quantity}`)) return [];
    const condition = { say: 'condition', with: { condition: { name: 'condition' as const, id: line.condition } } };
    return [[measuredWords(found, line.quantity), condition, limitWords(line)]];
  });
  return { figure: 'table', head: [{ say: 'headCheck' }, { say: 'headCondition' }, { say: 'headLimit' }], rows };
}
