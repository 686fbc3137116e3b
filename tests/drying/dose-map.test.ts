import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { integrate } from '../../src/drying/dose.ts';
import { notYetPast, reached } from '../../src/drying/dose-map.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import { NEVER, type TimeMap } from '../../src/time/time-map.ts';
import { anyMark, anyMechanism, madeUp, t0, wildAir } from './arbitrary.ts';

const minute = fc.integer({ min: t0 - 5_000, max: t0 + 30_000 });
const farMinute = fc.oneof(minute, fc.integer({ min: t0 - 100_000, max: t0 + 2_000_000 }), fc.constant(NEVER));
const someHours = fc.oneof(fc.double({ min: 0, max: 30, noNaN: true }), fc.constantFrom(0, 1 / 60, 1, 24, 500));
const dose = fc
  .tuple(wildAir(), anyMechanism, anyMark, fc.constantFrom(undefined, 5, 10))
  .map(([air, mechanism, mark, floor]) =>
    integrate(air, rateLaw(madeUp({ mechanism, ...(floor === undefined ? {} : { minFilmTempC: floor }) }), mark)),
  );

/** Asked of the definition: `latest` and `earliest` against `at` itself, one minute to either side. */
function inversesAgree(map: TimeMap, limit: number): void {
  const latest = map.latest(limit);
  if (latest > -1_000_000_000 && latest < NEVER) {
    expect(map.at(latest)).toBeLessThanOrEqual(limit);
    expect(map.at(latest + 1)).toBeGreaterThan(limit);
  }
  const earliest = map.earliest(limit);
  if (earliest > -1_000_000_000 && earliest < NEVER) {
    expect(map.at(earliest)).toBeGreaterThanOrEqual(limit);
    expect(map.at(earliest - 1)).toBeLessThan(limit);
  }
}

describe.each([
  ['reached', reached],
  ['notYetPast', notYetPast],
])('%s', (_, make) => {
  it('has latest and earliest as exact inverses of its whole minutes', () => {
    fc.assert(
      fc.property(dose, someHours, farMinute, (d, h, limit) => {
        inversesAgree(make(d, h), limit);
      }),
      { numRuns: 2000 },
    );
  });

  it('never goes down, and never before the minute asked of', () => {
    fc.assert(
      fc.property(dose, someHours, minute, fc.integer({ min: 0, max: 3000 }), (d, h, t, later) => {
        const map = make(d, h);
        expect(map.at(t)).toBeGreaterThanOrEqual(t);
        expect(map.at(t + later)).toBeGreaterThanOrEqual(map.at(t));
      }),
      { numRuns: 1000 },
    );
  });

  it('grows with the hours asked for', () => {
    fc.assert(
      fc.property(dose, someHours, someHours, minute, (d, a, b, t) => {
        expect(make(d, Math.max(a, b)).at(t)).toBeGreaterThanOrEqual(make(d, Math.min(a, b)).at(t));
      }),
    );
  });
});

describe('the two edges of the same hours', () => {
  it('lie at most a minute apart while something dries', () => {
    const air = {
      from: t0,
      stepMinutes: 5000,
      tempC: Float64Array.of(23, 23),
      rhPercent: Float64Array.of(50, 50),
      notes: [],
    };
    const d = integrate(air, rateLaw(madeUp({ mechanism: 'oxidation' }), 'sand'));
    expect(reached(d, 1.51).at(t0)).toBe(t0 + 91);
    expect(notYetPast(d, 1.51).at(t0)).toBe(t0 + 90);
  });

  it('are never reached and never past where it freezes for good', () => {
    const air = {
      from: t0,
      stepMinutes: 5000,
      tempC: Float64Array.of(2, 2),
      rhPercent: Float64Array.of(50, 50),
      notes: [],
    };
    const d = integrate(air, rateLaw(madeUp({ minFilmTempC: 5 }), 'sand'));
    expect(reached(d, 1).at(t0)).toBe(NEVER);
    expect(notYetPast(d, 1).at(t0)).toBe(NEVER);
    expect(reached(d, 1).latest(t0 + 100_000)).toBe(-1_000_000_000);
    expect(reached(d, 1).earliest(t0)).toBe(-1_000_000_000);
  });
});
