import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { integrate, type Dose } from '../../src/drying/dose.ts';
import { notYetPast, reached } from '../../src/drying/dose-map.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import { ALWAYS, NEVER, type TimeMap } from '../../src/time/time-map.ts';
import { anyMark, anyMechanism, madeUp, t0, wildAir } from './arbitrary.ts';

/** By as much sums of many minutes may fall short. */
const HAIR = 0.5e-6;
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
  expect(latest >= ALWAYS && latest <= NEVER).toBe(true);
  if (latest < NEVER) expect(map.at(latest + 1)).toBeGreaterThan(limit);
  else expect(limit).toBeGreaterThanOrEqual(NEVER);
  if (latest > ALWAYS && latest < NEVER) expect(map.at(latest)).toBeLessThanOrEqual(limit);
  const earliest = map.earliest(limit);
  expect(earliest >= ALWAYS && earliest <= NEVER).toBe(true);
  if (earliest < NEVER) expect(map.at(earliest)).toBeGreaterThanOrEqual(limit);
  if (earliest > ALWAYS) expect(map.at(earliest - 1)).toBeLessThan(limit);
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

/** An hour every three minutes: sums that are exact. */
const inSteps: Dose = {
  hoursAt: (minute) => Math.floor(minute / 3),
  record: { start: 0, end: 0 },
  last: 10_000,
};

describe('sums that are exact', () => {
  const minutes = fc.integer({ min: -300, max: 300 });
  it('the hours asked for, to the last bit, are enough, and are not past yet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), minutes, (hours, t) => {
        const begun = 3 * Math.floor(t / 3);
        expect(reached(inSteps, hours).at(t)).toBe(begun + 3 * hours);
        expect(notYetPast(inSteps, hours).at(t)).toBe(begun + 3 * hours + 2);
        for (const make of [reached, notYetPast]) inversesAgree(make(inSteps, hours), t);
        // Here what is asked for is met without the hair that is allowed for.
        expect(reached(inSteps, hours + HAIR).at(t)).toBe(begun + 3 * hours);
        expect(notYetPast(inSteps, hours - HAIR).at(t)).toBe(begun + 3 * hours + 2);
        for (const make of [reached(inSteps, hours + HAIR), notYetPast(inSteps, hours - HAIR)]) inversesAgree(make, t);
      }),
    );
  });
  it('a millionth of an hour more than there is asks for more, a millionth less does not', () => {
    expect(reached(inSteps, 4 + 1.2e-6).at(0)).toBe(15);
    expect(reached(inSteps, 4 - 1.2e-6).at(0)).toBe(12);
    expect(notYetPast(inSteps, 4 - 1.2e-6).at(0)).toBe(11);
    expect(notYetPast(inSteps, 4 + 1.2e-6).at(0)).toBe(14);
  });
  it('less than a millionth of an hour is no wait at any time, also past the last minute that is known', () => {
    for (const make of [reached, notYetPast])
      for (const hours of [0, 9e-7])
        for (const t of [-7, 0, 1, 9_999, 10_000, 10_001, 50_000]) {
          const map = make(inSteps, hours);
          expect([map.at(t), map.latest(t), map.earliest(t)]).toEqual([t, t, t]);
        }
  });
  it('what never comes is asked for at any time, and is the answer to what is asked past all time', () => {
    for (const map of [reached(inSteps, 2), notYetPast(inSteps, 2)]) {
      expect([map.latest(NEVER), map.latest(NEVER + 1), map.earliest(NEVER + 1)]).toEqual([NEVER, NEVER, NEVER]);
      expect(map.at(map.earliest(NEVER))).toBe(NEVER);
      expect(map.at(map.earliest(NEVER) - 1)).toBeLessThan(NEVER);
      expect([map.latest(ALWAYS - 1), map.earliest(ALWAYS)]).toEqual([ALWAYS, ALWAYS]);
    }
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
