// The integral of a rate over a room's air, against a sum made apart from it: the law asked in the middle of each minute.
import { expect, test } from 'vitest';
import { airForAWhile } from '../../src/air/room-air.ts';
import { airAt, seriesEnd, type AirSeries } from '../../src/air/series.ts';
import { dayTotals, doseOf, integrate, recallDayTotals } from '../../src/drying/dose.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import fc from '../support/property.ts';
import { anyMark, anyMechanism, hundredths, madeUp, t0 } from './arbitrary.ts';

const law = fc
  .tuple(anyMechanism, anyMark, fc.constantFrom(undefined, 8))
  .map(([mechanism, mark, floor]) =>
    rateLaw(madeUp({ mechanism, ...(floor === undefined ? {} : { minFilmTempC: floor }) }), mark),
  );

const wave = (i: number, perDay: number, of: number): number => Math.cos((2 * Math.PI * i) / perDay + of);

/** Some days that come again, or nearly, with samples as often as loggers take them. */
const days: fc.Arbitrary<AirSeries> = fc
  .record({
    stepMinutes: fc.constantFrom(15, 30, 15, 30, 15, 30, 3, 6, 7, 10, 20, 60),
    days: fc.integer({ min: 1, max: 4 }),
    meanC: hundredths(4, 25),
    swingK: fc.constantFrom(0, 2, 8),
    odd: fc.option(fc.record({ day: fc.nat(3), hour: fc.nat(23), byK: fc.constantFrom(-6, 0, 5), byRh: fc.nat(20) }), {
      nil: undefined,
      freq: 4,
    }),
  })
  .map(({ stepMinutes, days: count, meanC, swingK, odd }) => {
    const perDay = Math.floor(1440 / stepMinutes);
    const length = count * perDay + 2;
    const isOdd = (i: number) => odd !== undefined && Math.floor((i * stepMinutes) / 60) === 24 * odd.day + odd.hour;
    return {
      from: t0,
      stepMinutes,
      tempC: Float64Array.from(
        { length },
        (_, i) => meanC + swingK * wave(i % perDay, perDay, 0) + (isOdd(i) ? (odd?.byK ?? 0) : 0),
      ),
      rhPercent: Float64Array.from(
        { length },
        (_, i) => 55 - 3 * swingK * wave(i % perDay, perDay, 0) + (isOdd(i) ? (odd?.byRh ?? 0) : 0),
      ),
      notes: [],
    };
  });

test('is the sum of what each minute brings', () => {
  fc.assert(
    fc.property(days, law, (air, { rate }) => {
      const dose = integrate(air, { key: 'test', rate });
      const end = seriesEnd(air);
      let sum = 0;
      for (let minute = air.from; minute < end; minute += 1) {
        const { tempC, rhPercent } = airAt(air, minute + 0.5);
        sum += rate(tempC, rhPercent) / 60;
        if ((minute - air.from) % 97 === 0 || minute === end - 1)
          // A rate that begins or ends within three minutes may be taken as a straight line over them.
          expect(Math.abs(dose.hoursAt(minute + 1) - sum)).toBeLessThan(2e-3 * sum + 0.06);
      }
    }),
    { numRuns: 100 },
  );
});

interface Exact {
  readonly what: string;
  readonly rate: (u: number) => number;
  /** Its mean over a straight stretch of air, from one end to the other. */
  readonly mean: (a: number, b: number) => number;
  /** By how much straight lines between third minutes, in which the air changes by `step`, may miss the mean. */
  readonly miss: (a: number, b: number, step: number) => number;
}

const exact: readonly Exact[] = [
  { what: 'a straight line', rate: (u) => u + 40, mean: (a, b) => (a + b) / 2 + 40, miss: () => 0 },
  {
    what: 'a square',
    rate: (u) => u * u + 10,
    mean: (a, b) => (a * a + a * b + b * b) / 3 + 10,
    miss: (_, __, step) => step ** 2 / 6,
  },
  {
    what: 'nothing up to a limit, and a straight line from there on',
    rate: (u) => Math.max(0, u - 10),
    mean: (a, b) => {
      const [low, high] = [Math.min(a, b) - 10, Math.max(a, b) - 10];
      return high <= 0 ? 0 : low >= 0 ? (low + high) / 2 : (high * high) / 2 / (high - low);
    },
    miss: (a, b, step) => (a > 10 === b > 10 ? 0 : ((Math.abs(step) / 8) * step) / (b - a)),
  },
];

test.each(exact)('of $what is exact at each sample', ({ rate, mean, miss }) => {
  const u = (tempC: number, rhPercent: number) => tempC + (rhPercent - 50) / 9;
  fc.assert(
    fc.property(days, (air) => {
      // Samples that do not lie on the third minutes are cut off by the straight lines between those.
      fc.pre(air.stepMinutes % 3 === 0);
      const dose = integrate(air, { key: 'test', rate: (tempC, rhPercent) => rate(u(tempC, rhPercent)) });
      let [area, missed] = [0, 1e-6];
      for (let i = 0; i + 1 < air.tempC.length; i += 1) {
        const [from = 0, to = 0] = [i, i + 1].map((k) => u(air.tempC[k]!, air.rhPercent[k]!));
        area += mean(from, to) * (air.stepMinutes / 60);
        missed += miss(from, to, ((to - from) * 3) / air.stepMinutes) * (air.stepMinutes / 60);
        const gained = dose.hoursAt(air.from + (i + 1) * air.stepMinutes);
        // The third figure: what bends so little that three looks tell all.
        expect(Math.abs(gained - area)).toBeLessThan(missed + 1e-5 * area);
      }
    }),
    { numRuns: 1000 },
  );
});

test('a day like the one before but for one reading is not taken for the same', () => {
  const perDay = 96;
  const like = (value: number, odd: number) =>
    Float64Array.from({ length: 2 * perDay + 1 }, (_, i) => (i === perDay + 40 ? odd : value));
  const air = (tempC: Float64Array, rhPercent: Float64Array) => ({
    from: t0,
    stepMinutes: 15,
    tempC,
    rhPercent,
    notes: [],
  });
  const gained = (of: AirSeries) => {
    const dose = integrate(of, { key: 'sum', rate: (tempC, rhPercent) => tempC + rhPercent });
    return -dose.hoursAt(t0) + dose.hoursAt(t0 + 2 * 1440);
  };
  // Ten more at one reading, and straight lines to it and from it: ten for a quarter of an hour.
  const even = 60 * 48;
  expect(gained(air(like(10, 10), like(50, 50)))).toBeCloseTo(even, 6);
  expect(gained(air(like(10, 20), like(50, 50)))).toBeCloseTo(even + 2.5, 6);
  expect(gained(air(like(10, 10), like(50, 60)))).toBeCloseTo(even + 2.5, 6);
});

test('in the same air each law has its own sum, and two of one name the same', () => {
  const air = {
    from: t0,
    stepMinutes: 60,
    tempC: Float64Array.of(20, 20),
    rhPercent: Float64Array.of(50, 50),
    notes: [],
  };
  const law = (key: string, speed: number) => ({ key, rate: () => speed });
  expect(doseOf(air, law('slow', 1)).hoursAt(t0 + 60)).toBeCloseTo(1, 9);
  expect(doseOf(air, law('fast', 3)).hoursAt(t0 + 60)).toBeCloseTo(3, 9);
  expect(doseOf(air, law('slow', 1))).toBe(doseOf(air, law('slow', 1)));
});

test('a record that ends between two third minutes ends there', () => {
  for (const length of [1, 2, 4, 10, 20]) {
    const air = {
      from: t0,
      stepMinutes: length,
      tempC: Float64Array.of(0, 30),
      rhPercent: Float64Array.of(50, 50),
      notes: [],
    };
    // A rate that grows from 0 to 30: half of that on the whole, a quarter in the first half.
    const dose = integrate(air, { key: 'ramp', rate: (tempC) => tempC });
    expect(dose.hoursAt(t0 + length)).toBeCloseTo((15 * length) / 60, 9);
    if (length % 2 === 0) expect(dose.hoursAt(t0 + length / 2)).toBeCloseTo((7.5 * length) / 2 / 60, 9);
  }
});

test('before and after the record it goes on at the mean speed of its first and last day', () => {
  fc.assert(
    fc.property(days, law, fc.integer({ min: 1, max: 9000 }), (air, { rate }, k) => {
      const dose = integrate(air, { key: 'test', rate });
      const end = seriesEnd(air);
      const day = Math.min(1440, end - air.from);
      const speed = (from: number, to: number) => (dose.hoursAt(to) - dose.hoursAt(from)) / (to - from);
      expect(dose.hoursAt(air.from)).toBe(0);
      expect(speed(air.from - k, air.from)).toBeCloseTo(speed(air.from, air.from + day), 9);
      expect(speed(end, end + k)).toBeCloseTo(speed(end - day, end), 9);
      expect(dose.last).toBe(end + 400 * 1440);
    }),
    { numRuns: 60 },
  );
});

test('asked of any minute first, it says the same between any two, to the last bit', () => {
  const minute = fc.integer({ min: -500, max: 9000 });
  fc.assert(
    fc.property(days, law, fc.array(minute, { minLength: 3, maxLength: 8 }), (air, { rate }, minutes) => {
      const forwards = integrate(air, { key: 'test', rate });
      for (let k = 0; k <= 6000; k += 60) forwards.hoursAt(t0 + k);
      const asked = integrate(air, { key: 'test', rate });
      const [first = 0] = minutes;
      for (const k of minutes)
        expect(asked.hoursAt(t0 + k) - asked.hoursAt(t0 + first)).toBe(
          forwards.hoursAt(t0 + k) - forwards.hoursAt(t0 + first),
        );
    }),
    { numRuns: 60 },
  );
});

test('over air that is otherwise for a while it is that of any air, to the last bit, whoever was asked first', () => {
  // A day that is otherwise from its first sample on, or up to its last, is where a day is taken for usual that is not.
  const often = (any: fc.Arbitrary<number>) =>
    fc.oneof(
      any,
      fc.tuple(fc.nat(4), fc.integer({ min: -4, max: 4 })).map(([k, off]) => 1440 * k + off),
    );
  const clock = fc.oneof(
    fc.integer({ min: -2000, max: 6000 }),
    fc.nat(4).map((k) => 1440 * k),
  );
  const during = fc.tuple(clock, fc.oneof(fc.integer({ min: 1, max: 3000 }), fc.constantFrom(15, 1425, 1440, 1455)));
  const asked = fc.array(often(fc.integer({ min: -500, max: 9000 })), { minLength: 2, maxLength: 8 });
  const onGrid = days.filter(({ stepMinutes }) => stepMinutes === 15);
  fc.assert(
    fc.property(onGrid, law, during, asked, fc.boolean(), (usual, { key, rate }, [start, minutes], ks, first) => {
      const of = { kind: 'constant', tempC: 20, rhPercent: 50 } as const;
      const other = { during: { start: t0 + start, end: t0 + start + minutes }, byK: 4, toRhPercent: 45 };
      const air = airForAWhile({ kind: 'for-a-while', of, ...other }, usual);
      const own = { key: `${key} ${start} ${minutes}`, rate };
      if (first) for (let k = 0; k <= 6000; k += 700) doseOf(usual, own).hoursAt(t0 + k);
      const apart = integrate({ ...air }, own);
      const aroundMidnights = [1, 2, 3, 4].flatMap((day) => [-5, -4, -2, -1, 0, 1, 2, 4].map((k) => 1440 * day + k));
      for (const k of [...ks, ...aroundMidnights])
        expect(doseOf(air, own).hoursAt(t0 + k) - doseOf(air, own).hoursAt(t0)).toBe(
          apart.hoursAt(t0 + k) - apart.hoursAt(t0),
        );
    }),
    { numRuns: 120 },
  );
});

test('with the days that were summed up before it is the same to the last bit, and they are not summed up again', () => {
  const minutes = fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(days, law, minutes, (air, { key, rate }, ks) => {
      const before = { ...air };
      for (const k of [0, 6000]) doseOf(before, { key, rate }).hoursAt(air.from + k);
      recallDayTotals(air, new Map([...dayTotals(before)].map(([of, totals]) => [of, totals.slice()])));
      let asked = 0;
      const counting = (tempC: number, rhPercent: number) => {
        asked += 1;
        return rate(tempC, rhPercent);
      };
      const [then, now] = [doseOf(before, { key, rate }), doseOf(air, { key, rate: counting })];
      const last = 1440 * Math.floor((Math.min(6000, seriesEnd(air) - air.from) - 1) / 1440);
      for (const k of [last, ...ks]) {
        expect(now.hoursAt(air.from + k) - now.hoursAt(air.from)).toBe(
          then.hoursAt(air.from + k) - then.hoursAt(air.from),
        );
        if (k === last) expect(asked).toBe(0);
      }
    }),
    { numRuns: 40 },
  );
});

test('it never goes down, wherever one day meets the next', () => {
  fc.assert(
    fc.property(days, law, fc.nat(4), (air, { rate }, day) => {
      const dose = integrate(air, { key: 'test', rate });
      const midnight = t0 + day * 1440;
      for (let k = midnight - 10; k < midnight + 10; k += 1)
        expect(dose.hoursAt(k + 1)).toBeGreaterThanOrEqual(dose.hoursAt(k));
    }),
    { numRuns: 40 },
  );
});

test('a day that is asked for first is not taken for the one before it, which nobody has asked for', () => {
  const perDay = 96;
  const tempC = Float64Array.from({ length: 4 * perDay + 1 }, (_, i) => 15 + 5 * wave(i % perDay, perDay, 0));
  const air = { from: t0, stepMinutes: 15, tempC, rhPercent: tempC.map(() => 50), notes: [] };
  const gainedOn = (day: number, first: number) => {
    const dose = integrate(air, { key: 'warmth', rate: (t) => t });
    dose.hoursAt(t0 + first * 1440 + 60);
    return dose.hoursAt(t0 + (day + 1) * 1440) - dose.hoursAt(t0 + day * 1440);
  };
  for (const first of [0, 1, 2, 3])
    for (const day of [0, 1, 2, 3]) expect(gainedOn(day, first)).toBeCloseTo(15 * 24, 6);
});
