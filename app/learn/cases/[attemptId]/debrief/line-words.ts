import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import { limitFacts } from '@/app/_server/limit-facts';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { limitWords } from '@/app/_ui/limit-words';
import type { LimitLine, Rig } from '@/lib/rig/rig';

/** A line of the limit sheet by its id; the id itself where the sheet no longer has it. */
export function useLineWords(rig: Rig | undefined, units: UnitChoice): (id: string) => string {
  const say = useTranslations('limits');
  const run = useTranslations('conditionsShort');
  return (id) => {
    const line: LimitLine | undefined = rig?.limits.find((candidate) => candidate.id === id);
    if (!line) return id;
    return say('line', {
      condition: run(line.condition),
      limit: limitWords(say, line, units, limitFacts(catalogue(), line)),
    });
  };
}
