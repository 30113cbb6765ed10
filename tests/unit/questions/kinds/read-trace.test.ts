import { expect, test } from 'vitest';
import type { ShownLine } from '@/lib/checks/shown';
import { type Album, albumOf } from '@/lib/questions/kinds/read-trace/album';
import { bandOf, farthest, outside } from '@/lib/questions/kinds/read-trace/departure';
import { readTraceRanges } from '@/lib/questions/kinds/read-trace/ranges';
import { recordedOn } from '@/lib/questions/kinds/read-trace/recording';
import { dayOf } from '@/lib/questions/shared/rig-day';
import type { TraceId } from '@/lib/rig/traces/trace';
import { aRig, catalogue } from '../../../support/bench-rig';

function aLine(values: readonly number[]): ShownLine {
  return { id: 'sensed-rail-pressure', unit: 'MPa', times: values.map((_, index) => index), values };
}

test('a line lies outside of another by no more than what the other never shows nearby', () => {
  const sound = aLine([0, 10, 20, 30, 30]);
  expect(outside(aLine([0, 0, 10, 20, 30]), bandOf([sound], 1))).toEqual([0, 0, 0, 0, 0]);
  expect(outside(aLine([0, 0, 10, 20, 30]), bandOf([sound], 0))).toEqual([0, -10, -10, -10, 0]);
  expect(outside(aLine([0, 0, 0, 45, 30]), bandOf([sound], 1))).toEqual([0, 0, -10, 15, 0]);
});

test('several lines reach from the lowest to the highest of them', () => {
  expect(bandOf([aLine([0, 10]), aLine([5, 2])], 0)).toEqual({ low: [0, 2], high: [5, 10] });
});

test('what lies farthest out counts whichever side it is on', () => {
  expect(farthest([0, -3, 2])).toBe(1);
});

function anAlbum(trace: TraceId, rig = 'tern-13'): Album {
  const day = dayOf(1, aRig(rig), catalogue);
  const recorded = recordedOn(day, catalogue).find((one) => one.trace === trace);
  const ranges = readTraceRanges.parse(catalogue.questions.get('read-trace')?.ranges);
  const album = recorded && albumOf(day, recorded, ranges, catalogue);
  if (!album) throw new Error('No album');
  return album;
}

/** What is seen of a cause at its severest. */
function severest(album: Album, cause: string) {
  const all = album.pictures.filter(({ fault }) => fault.cause.id === cause);
  const picture = all[all.length - 1];
  if (!picture) throw new Error(`No picture of ${cause}`);
  const wrong = picture.wrong && album.stretches[picture.wrong.stretch];
  return { ...picture, from: wrong?.from, to: wrong?.to };
}

// Common practice, no source: with the vent blocked air cannot follow the fuel, and nothing else in the system grows so.
test('a blocked vent alone shows in the tank', () => {
  const album = anAlbum('tank-vacuum');
  const shows = album.pictures.filter(({ plain }) => plain).map(({ fault }) => fault.cause.id);
  expect([...new Set(shows)]).toEqual(['tank-vent-blocked']);
});

test('a lift pump that does not turn shows as soon as a sound one would build pressure', () => {
  const { from, to } = severest(anAlbum('prime'), 'lift-pump-open-circuit');
  expect([from, to]).toEqual([0, 10]);
});

test('a rail sensor that adds to the truth shows before anything turns', () => {
  expect(severest(anAlbum('crank'), 'rail-sensor-reads-high').from).toBe(0);
});

test('a plugged inlet screen shows when the pedal asks for more than comes through it, not at idle', () => {
  const album = anAlbum('snap');
  const { from } = severest(album, 'inlet-screen-plugged');
  expect(from).toBeGreaterThanOrEqual(aRig().traces.snap.pedalAt);
});

test('a leaking inlet check valve does not show on the decay of rail pressure', () => {
  expect(severest(anAlbum('decay'), 'inlet-check-valve-leaking').hidden).toBe(true);
});

test('stretches cover a recording, each wide enough to be pointed at', () => {
  for (const rig of catalogue.rigs.keys())
    for (const { trace } of recordedOn(dayOf(1, aRig(rig), catalogue), catalogue)) {
      if (trace === 'tank-vacuum') continue;
      const { stretches, sound } = anAlbum(trace, rig);
      const end = sound[0]?.times[sound[0].times.length - 1] ?? 0;
      expect(stretches.length, `${trace} on ${rig}`).toBeGreaterThanOrEqual(4);
      expect(stretches[0]?.from).toBe(0);
      expect(stretches[stretches.length - 1]?.to).toBeCloseTo(end, 6);
      for (const { from, to } of stretches) expect((to - from) / end).toBeGreaterThan(0.049);
    }
});
