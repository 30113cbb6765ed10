import type { Catalogue } from '../../catalogue';
import type { TraceId } from '../../rig/traces/trace';
import { topicsOf } from '../../topics/topics-of';
import { defineKind } from '../kind';
import { drawAgain } from '../shared/draw-again';
import { dayOf } from '../shared/rig-day';
import { albumOf, type Picture } from './read-trace/album';
import { causeQuestion } from './read-trace/cause-question';
import { readTraceRanges } from './read-trace/ranges';
import { recordedOn } from './read-trace/recording';
import { whereQuestion } from './read-trace/where-question';

const TOPICS = [
  'suction-tank-and-air',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'filtration',
  'metering-and-rail-control',
  'high-pressure-and-leakage',
  'returns-and-temperature',
  'electrical-supply-sensors-and-codes',
];

/** What a trace is read for, whatever is wrong. */
const TOPICS_OF_TRACE: Readonly<Record<TraceId, readonly string[]>> = {
  prime: ['priming-and-lift-pump'],
  crank: ['metering-and-rail-control', 'high-pressure-and-leakage'],
  'tank-vacuum': ['suction-tank-and-air'],
  snap: ['metering-and-rail-control'],
  decay: ['high-pressure-and-leakage'],
};

/** Where a recorded trace goes wrong, and what it shows: computed with the fault and without. */
export const readTrace = defineKind({
  id: 'read-trace',
  ranges: readTraceRanges,
  topics: TOPICS,
  make({ rig, topic, ranges, catalogue, stream }) {
    return drawAgain(stream, (tried) => {
      const day = dayOf(tried('day').pick(ranges.days), rig, catalogue);
      const recorded = tried('trace').pick(recordedOn(day, catalogue), ({ trace }) =>
        trace === 'tank-vacuum' ? ranges.tankWeight : 1,
      );
      const album = albumOf(day, recorded, ranges, catalogue);
      if (!album) return undefined;
      const topics = (picture: Picture) => topicsWith(recorded.trace, picture, catalogue);
      const on = album.pictures.filter((picture) => topic === undefined || topics(picture).includes(topic));
      const whichCause = tried('form').next() < ranges.causeShare || album.stretches.length === 0;
      const found = (whichCause ? causeQuestion : whereQuestion)(tried, album, on, ranges);
      return found && { ...found.asked, topics: topics(found.picture) };
    });
  },
});

/** Where nothing wrong is to be seen, the trace alone is what is drilled. */
function topicsWith(trace: TraceId, { fault, hidden }: Picture, catalogue: Catalogue): string[] {
  const ofCause = hidden ? [] : topicsOf(fault.cause, catalogue).map(({ id }) => id);
  return TOPICS.filter((id) => TOPICS_OF_TRACE[trace].includes(id) || ofCause.includes(id));
}
