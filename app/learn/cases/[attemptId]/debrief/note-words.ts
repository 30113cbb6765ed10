import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import { type DebriefView, repairName } from '@/app/_server/debrief-view';
import { checkName } from '@/app/_server/route-views';
import { areas } from '@/lib/areas';
import type { Note } from '@/lib/grading/grade';
import { conditionIds } from '@/lib/rig/condition';

/** A note's values with names in place of ids, and the reading it is about. */
export function useNoteWords(view: DebriefView): (note: Note) => Record<string, string | number> {
  const run = useTranslations('conditionsShort');
  const area = useTranslations('areas');
  const names: Record<string, (id: string) => string> = {
    check: checkName,
    repair: repairName,
    instrument: (id) => catalogue().gauges.get(id)?.text.en.name ?? id,
    cause: (id) => catalogue().causes.get(id)?.text.en.name ?? id,
    step: (id) => catalogue().restoring.get(id)?.text.en.name ?? id,
    condition: (id) => {
      const condition = conditionIds.find((known) => known === id);
      return condition ? run(condition) : id;
    },
    area: (id) => {
      const known = areas.find((one) => one === id);
      return known ? area(known) : id;
    },
  };
  return ({ values }) => {
    const entries = Object.entries(values).map(([key, value]) => [key, names[key]?.(String(value)) ?? value]);
    return { ...Object.fromEntries(entries), ...readingOf(view, values, run) };
  };
}

function readingOf(
  { attempt, findings }: DebriefView,
  { seq, finding }: Note['values'],
  run: ReturnType<typeof useTranslations<'conditionsShort'>>,
): { reading?: string } {
  const judged = findings.find(({ grade }) => grade.seq === finding);
  const reading = judged?.reading ?? attempt.readings.find((one) => one.seq === seq);
  if (!reading) return {};
  const name = judged && reading.check.severalQuantities ? judged.item.label : reading.check.name;
  return { reading: `${name}, ${run(reading.condition)}` };
}
