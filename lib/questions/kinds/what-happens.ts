import { defineKind } from '../kind';
import { drawAgain } from '../shared/draw-again';
import { drawFault } from '../shared/draw-fault';
import { dayOf } from '../shared/rig-day';
import { gridQuestion } from './what-happens/grid-question';
import { patternQuestion } from './what-happens/pattern-question';
import { whatHappensRanges } from './what-happens/ranges';

/** What a fault does to readings, and which fault does it: computed on the sound rig and on the broken one. */
export const whatHappens = defineKind({
  id: 'what-happens',
  ranges: whatHappensRanges,
  topics: [
    'suction-tank-and-air',
    'priming-and-lift-pump',
    'low-pressure-supply-and-regulation',
    'filtration',
    'metering-and-rail-control',
    'high-pressure-and-leakage',
    'returns-and-temperature',
    'electrical-supply-sensors-and-codes',
    'fuel-quality',
  ],
  make({ rig, topic, ranges, catalogue, stream }) {
    return drawAgain(stream, (tried) => {
      const day = dayOf(Math.floor(tried('day').next() * ranges.days), rig, catalogue);
      const fault = drawFault(tried, day, ranges.severities, catalogue, topic);
      if (!fault) return undefined;
      const whichCause = tried('form').next() < ranges.whichCauseShare;
      const ask = whichCause ? patternQuestion : gridQuestion;
      return ask(tried, day, fault, ranges, catalogue);
    });
  },
});
