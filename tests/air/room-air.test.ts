import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../src/air/psychrometrics.ts';
import { AIR_STEP_MINUTES, airForAWhile, roomAir } from '../../src/air/room-air.ts';
import { airAt, sampleAir, seriesEnd } from '../../src/air/series.ts';
import type { AirSample, AirSource } from '../../src/model/shop.ts';
import { minuteAt } from '../../src/time/zone.ts';

const zone = 'Europe/Dublin';
const monday = minuteAt('2027-01-11', 0, zone);
const day = 1440;

const record = (hours: number, every = 60, from = monday): AirSample[] =>
  Array.from({ length: Math.floor((hours * 60) / every) + 1 }, (_, i) => ({
    minute: from + i * every,
    tempC: 5 + ((i * every) % day) / 240,
    rhPercent: 80,
  }));

describe('a series of samples', () => {
  it('runs straight between samples and holds its ends', () => {
    const series = sampleAir(1000, 1060, 30, (m) => ({ tempC: m - 1000, rhPercent: 50 }));
    expect(airAt(series, 1015).tempC).toBe(15);
    expect(airAt(series, 0).tempC).toBe(0);
    expect(airAt(series, 5000).tempC).toBe(60);
    expect(seriesEnd(series)).toBe(1060);
  });
});

describe('constant air', () => {
  it('is itself everywhere', () => {
    const air = roomAir({ kind: 'constant', tempC: 18, rhPercent: 55 }, zone, monday, monday + 30 * day);
    expect(airAt(air, monday + 12345)).toEqual({ tempC: 18, rhPercent: 55 });
    expect(air.notes).toEqual([]);
  });
});

describe("one day's curve", () => {
  const source: AirSource = {
    kind: 'daily',
    curve: [
      { clock: 15 * 60, tempC: 19, rhPercent: 50 },
      { clock: 6 * 60, tempC: 12, rhPercent: 70 },
    ],
  };

  it('passes through its points on the wall clock, also in summer', () => {
    for (const date of ['2027-01-13', '2027-07-14']) {
      const from = minuteAt(date, 0, zone);
      const air = roomAir(source, zone, from, from + 2 * day);
      expect(airAt(air, minuteAt(date, 6 * 60, zone)).tempC).toBeCloseTo(12, 6);
      expect(airAt(air, minuteAt(date, 15 * 60, zone)).tempC).toBeCloseTo(19, 6);
      expect(airAt(air, minuteAt(date, 10.5 * 60, zone)).rhPercent).toBeCloseTo(60, 6);
    }
  });

  it('runs straight on over midnight', () => {
    const air = roomAir(source, zone, monday, monday + 2 * day);
    // 15:00 to 06:00 is 15 h; midnight lies 9 h on
    expect(airAt(air, monday + day).tempC).toBeCloseTo(19 - (7 * 9) / 15, 6);
  });

  it('keeps to the clock on the day it changes', () => {
    const sunday = minuteAt('2027-03-28', 0, zone);
    const air = roomAir(source, zone, sunday, sunday + day);
    expect(airAt(air, minuteAt('2027-03-28', 6 * 60, zone)).tempC).toBeCloseTo(12, 6);
  });
});

describe('monthly means', () => {
  const months = Array.from({ length: 12 }, (_, i) => ({ tempC: i === 0 ? 5 : 10, rhPercent: 80, swingK: 6 }));

  it('are met in the middle of the month, and swing about the mean with the same water in the air', () => {
    const mid = minuteAt('2027-01-15', 0, zone);
    const air = roomAir({ kind: 'monthly', months }, zone, mid, mid + day);
    const warmest = airAt(air, minuteAt('2027-01-15', 15 * 60, zone));
    const coldest = airAt(air, minuteAt('2027-01-15', 3 * 60, zone));
    expect(warmest.tempC).toBeCloseTo(8, 6);
    expect(coldest.tempC).toBeCloseTo(2, 6);
    expect(humidityRatio(warmest.tempC, warmest.rhPercent)).toBeCloseTo(humidityRatio(5, 80), 8);
    expect(coldest.rhPercent).toBeLessThanOrEqual(100);
  });

  it('change slowly from month to month, also over new year', () => {
    const from = minuteAt('2026-12-01', 0, zone);
    const air = roomAir(
      { kind: 'monthly', months: months.map(({ tempC, rhPercent }) => ({ tempC, rhPercent })) },
      zone,
      from,
      from + 100 * day,
    );
    for (let i = 1; i < air.tempC.length; i += 1) expect(Math.abs(air.tempC[i]! - air.tempC[i - 1]!)).toBeLessThan(0.2);
    expect(Math.min(...air.tempC)).toBeCloseTo(5, 6);
  });
});

describe('a record', () => {
  const source = (samples: AirSample[]): AirSource => ({ kind: 'series', name: 'shed.csv', samples });

  it('is itself where it was taken, without a note', () => {
    const samples = record(48);
    const air = roomAir(source(samples), zone, monday, monday + 2 * day);
    for (const s of samples) expect(airAt(air, s.minute).tempC).toBeCloseTo(s.tempC, 9);
    expect(air.notes).toEqual([]);
  });

  it('repeats its last 24 hours past its end, and says so', () => {
    const air = roomAir(source(record(72)), zone, monday, monday + 10 * day);
    for (let hour = 73; hour < 240; hour += 1) {
      const held = airAt(air, monday + (48 + (hour % 24 === 0 ? 24 : hour % 24)) * 60);
      expect(airAt(air, monday + hour * 60).tempC).toBeCloseTo(held.tempC, 9);
    }
    expect(air.notes).toEqual([
      expect.objectContaining({ code: 'after-record', from: monday + 3 * day, to: monday + 10 * day }),
    ]);
  });

  it('repeats its first 24 hours before its beginning, and says so', () => {
    const air = roomAir(source(record(72)), zone, monday - 2 * day, monday + day);
    expect(airAt(air, monday - 2 * day + 6 * 60).tempC).toBeCloseTo(airAt(air, monday + 6 * 60).tempC, 9);
    expect(air.notes).toEqual([expect.objectContaining({ code: 'before-record', from: monday - 2 * day, to: monday })]);
  });

  it('bridges a short hole and fills a long one with the same hours of the day before, and says so', () => {
    const whole = record(96);
    const holed = whole.filter((s) => s.minute < monday + 50 * 60 || s.minute > monday + 60 * 60);
    const air = roomAir(source(holed), zone, monday, monday + 4 * day);
    expect(airAt(air, monday + 55 * 60).tempC).toBeCloseTo(airAt(air, monday + 31 * 60).tempC, 9);
    expect(air.notes.map((n) => [n.code, n.from, n.to])).toEqual([['gap-filled', monday + 49 * 60, monday + 61 * 60]]);
    const short = whole.filter((s) => s.minute !== monday + 55 * 60);
    expect(roomAir(source(short), zone, monday, monday + 4 * day).notes).toEqual([]);
  });

  it('shorter than a day holds its nearest value', () => {
    const air = roomAir(source(record(3)), zone, monday - day, monday + 2 * day);
    expect(airAt(air, monday + 2 * day).tempC).toBeCloseTo(5 + 180 / 240, 9);
    expect(airAt(air, monday - 60).tempC).toBe(5);
    expect(air.notes.map((n) => n.code)).toEqual(['before-record', 'after-record']);
  });

  it('never leaves the range of what was recorded', () => {
    const wild = fc.array(
      fc.record({
        minute: fc.integer({ min: monday, max: monday + 5 * day }),
        tempC: fc.integer({ min: -10, max: 30 }),
        rhPercent: fc.integer({ min: 0, max: 100 }),
      }),
      { minLength: 1, maxLength: 60 },
    );
    fc.assert(
      fc.property(wild, (samples) => {
        const byMinute = [...new Map(samples.map((s) => [s.minute, s])).values()];
        const air = roomAir(source(byMinute), zone, monday - 2 * day, monday + 8 * day);
        const temps = byMinute.map((s) => s.tempC);
        expect(Math.min(...air.tempC)).toBeGreaterThanOrEqual(Math.min(...temps) - 1e-9);
        expect(Math.max(...air.tempC)).toBeLessThanOrEqual(Math.max(...temps) + 1e-9);
      }),
    );
  });

  it('gives the same hour the same air whenever it is asked for', () => {
    const samples = record(72, 7);
    const early = roomAir(source(samples), zone, monday, monday + 3 * day);
    const late = roomAir(source(samples), zone, monday + 1003, monday + 3 * day);
    expect(airAt(late, monday + 2000)).toEqual(airAt(early, monday + 2000));
  });
});

describe('outdoor air heated', () => {
  const outdoors: AirSource = { kind: 'constant', tempC: 5, rhPercent: 85 };
  const setPoints = [
    { clock: 7 * 60, tempC: 20 },
    { clock: 18 * 60, tempC: 12 },
  ];
  const heated = (over: Partial<Extract<AirSource, { kind: 'heated' }>> = {}): AirSource => ({
    kind: 'heated',
    outdoors,
    setPoints,
    lagHours: 2,
    ...over,
  });

  it('keeps the water of the air: 5 °C, 85 % is 31.7 % at 20 °C (ASHRAE 2017, chapter 1, worked by hand)', () => {
    const air = roomAir(heated({ lagHours: 0 }), zone, monday, monday + 2 * day);
    const noon = airAt(air, monday + 12 * 60);
    expect(noon.tempC).toBe(20);
    expect(Math.abs(noon.rhPercent - 31.71)).toBeLessThan(0.01);
    expect(airAt(air, monday + 22 * 60).tempC).toBe(12);
  });

  it('closes 63 % of the way in one lag', () => {
    const air = roomAir(heated(), zone, monday, monday + 3 * day);
    const before = airAt(air, monday + day + 18 * 60).tempC;
    const after = airAt(air, monday + day + 20 * 60).tempC;
    expect((before - after) / (before - 12)).toBeCloseTo(1 - Math.exp(-1), 2);
    expect(airAt(air, monday + day + 7 * 60).tempC).toBeCloseTo(12 + 8 * Math.exp(-11 / 2) * Math.exp(-0), 1);
  });

  it('is no damper than the drier is set, and follows outdoors where that is warmer', () => {
    const muggy = roomAir(
      heated({ outdoors: { kind: 'constant', tempC: 24, rhPercent: 80 }, driedToRhPercent: 55 }),
      zone,
      monday,
      monday + day,
    );
    expect(airAt(muggy, monday + 600)).toEqual({ tempC: 24, rhPercent: 55 });
  });

  it('does not depend on when the look begins', () => {
    const long = roomAir(heated(), zone, monday - 5 * day, monday + 2 * day);
    const short = roomAir(heated(), zone, monday, monday + 2 * day);
    expect(Math.abs(airAt(long, monday + 30).tempC - airAt(short, monday + 30).tempC)).toBeLessThan(0.05);
  });

  it('passes on what was filled in of the record outdoors', () => {
    const air = roomAir(
      heated({ outdoors: { kind: 'series', name: 'o.csv', samples: record(48) } }),
      zone,
      monday,
      monday + 4 * day,
    );
    expect(air.notes.map((n) => n.code)).toEqual(['after-record']);
    expect(air.notes[0]?.text).toContain('outdoors');
  });
});

describe('other air for a while', () => {
  it('laid onto air that is known already is that which is worked out from the beginning', () => {
    const usual = fc.constantFrom<AirSource>(
      { kind: 'constant', tempC: 18, rhPercent: 60 },
      {
        kind: 'daily',
        curve: [
          { clock: 360, tempC: 12, rhPercent: 70 },
          { clock: 900, tempC: 19, rhPercent: 50 },
        ],
      },
      { kind: 'series', name: 'log', samples: record(72) },
      {
        kind: 'heated',
        outdoors: { kind: 'series', name: 'log', samples: record(72) },
        setPoints: [{ clock: 420, tempC: 19 }],
        lagHours: 2,
      },
    );
    const span = fc.tuple(fc.nat(4 * day), fc.integer({ min: 1, max: day }));
    const change = fc.constantFrom({ byK: 3 }, { byK: 10 }, { toRhPercent: 40 });
    fc.assert(
      fc.property(usual, span, change, fc.nat(60), (of, [start, minutes], other, offset) => {
        const during = { start: monday + start, end: monday + start + minutes };
        const source = { kind: 'for-a-while', of, during, ...other } as const;
        const known = roomAir(of, zone, monday + offset, monday + 5 * day);
        const then = airForAWhile(source, known);
        expect(then).toEqual(roomAir(source, zone, known.from, seriesEnd(known)));
        // What it says of itself is so.
        const { but } = then;
        expect(but !== undefined).toBe(known.stepMinutes === AIR_STEP_MINUTES);
        if (but === undefined) return;
        then.tempC.forEach((tempC, i) => {
          if (i >= but.first && i < but.end) return;
          expect([tempC, then.rhPercent[i]]).toEqual([but.usual.tempC[i], but.usual.rhPercent[i]]);
        });
      }),
    );
  });
});
