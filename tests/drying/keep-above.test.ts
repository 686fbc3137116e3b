import { expect, test } from 'vitest';
import { airAt, seriesEnd, type AirSeries } from '../../src/air/series.ts';
import { coldestAhead, warmEnough } from '../../src/drying/keep-above.ts';
import fc from '../support/property.ts';
import { hundredths, t0, wildAir } from './arbitrary.ts';

const anyAir = fc.oneof(
  wildAir(0, 30),
  // Samples of whole degrees, which touch the limit.
  fc.array(fc.integer({ min: 8, max: 12 }), { minLength: 2, maxLength: 40 }).map((temps): AirSeries => ({
    from: t0,
    stepMinutes: 15,
    tempC: Float64Array.from(temps),
    rhPercent: new Float64Array(temps.length).fill(50),
    notes: [],
  })),
);

test('a coat may start where no minute from its start until the hours after its end is colder', () => {
  const seen = { warm: 0, cold: 0 };
  fc.assert(
    fc.property(anyAir, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 60 }), (air, after, run) => {
      const spans = warmEnough({ tempC: 10, hours: after / 60 }, air, run);
      const minutes = run + Math.ceil((after / 60) * 60);
      const [from, to] = [t0 - 150, seriesEnd(air) + 50];
      // From the last on: how many minutes from this one on are warm enough.
      let warm = Infinity;
      for (let start = to; start >= from; start -= 1) {
        warm = airAt(air, start).tempC >= 10 ? warm + 1 : 0;
        const isWarm = warm >= minutes;
        expect([start, spans.some((s) => s.start <= start && start < s.end)]).toEqual([start, isWarm]);
        seen[isWarm ? 'warm' : 'cold'] += 1;
      }
      for (const { start, end } of spans) expect(start < end).toBe(true);
    }),
    { numRuns: 300 },
  );
  expect(Math.min(seen.warm, seen.cold)).toBeGreaterThan(100);
});

test('warm for just as long as it takes is long enough', () => {
  const air = {
    from: t0,
    stepMinutes: 15,
    tempC: Float64Array.of(9, 10, 10, 9),
    rhPercent: new Float64Array(4).fill(50),
    notes: [],
  };
  const starts = (run: number) => warmEnough({ tempC: 10, hours: 0 }, air, run).map((s) => [s.start - t0, s.end - t0]);
  // Warm enough at the 16 minutes from 15 to 30.
  expect(starts(15)).toEqual([[15, 17]]);
  expect(starts(16)).toEqual([[15, 16]]);
  expect(starts(17)).toEqual([]);
});

test('the coldest minute to come is that of a look at each', () => {
  fc.assert(
    fc.property(anyAir, fc.integer({ min: 0, max: 200 }), hundredths(-0.2, 1.2), (air, after, share) => {
      const minute = t0 + Math.round(share * (seriesEnd(air) - t0));
      let coldest = Infinity;
      for (let m = minute; m <= minute + Math.ceil((after / 60) * 60); m += 1)
        coldest = Math.min(coldest, airAt(air, m).tempC);
      expect(coldestAhead({ tempC: 10, hours: after / 60 }, air, minute)).toBeCloseTo(coldest, 9);
    }),
    { numRuns: 300 },
  );
});
