import { describe, expect, test } from 'vitest';
import { chanceBy, endWithChance, promised, simulateEnds, type Link } from '../../src/drying/chance.ts';
import { deviates } from '../../src/drying/random.ts';
import { drawing, logDeviation, Z95 } from '../../src/drying/spread.ts';
import { NEVER, shift } from '../../src/time/time-map.ts';
import { film, hours, madeUp, still, t0 } from './arbitrary.ts';

test('a spread: typical in the middle, low and high with one in twenty beyond, each side log-normal by itself', () => {
  const at = drawing(hours(10, 6, 20));
  expect([at(-Z95), at(0), at(Z95)].map((h) => Math.round(h * 1e9) / 1e9)).toEqual([6, 10, 20]);
  expect(at(Z95 / 2)).toBeCloseTo(Math.sqrt(200), 9);
  expect(at(-Z95 / 2)).toBeCloseTo(Math.sqrt(60), 9);
});

test('a spread that begins at nothing goes straight up from its typical figure', () => {
  for (const low of [0, -1]) {
    const at = drawing({ low, typical: 2, high: 6 });
    expect([at(-1), at(0), at(Z95), at(Z95 / 2)]).toEqual([2, 2, 6, 4]);
  }
  expect(drawing({ low: 0, typical: 0, high: 5 })(Z95)).toBeCloseTo(5, 12);
  expect(drawing({ low: 1, typical: 0, high: 5 })(Z95)).toBeCloseTo(5, 12);
});

test('its deviation: half of the logarithm from low to high, by 1.645', () => {
  expect(logDeviation({ low: 5, high: 20, typical: 10 })).toBeCloseTo(Math.log(4) / 3.2897, 4);
  expect(logDeviation({ low: 0, high: 20, typical: 10 })).toBe(0);
});

/** The same row of numbers by whole numbers without end instead of 32-bit operations. */
function* row(seed: number): Generator<number> {
  const word = 2n ** 32n;
  let state = BigInt(seed) % word;
  for (;;) {
    state = (state + 0x9e3779b9n) % word;
    let mixed = ((state ^ (state >> 16n)) * 0x85ebca6bn) % word;
    mixed = ((mixed ^ (mixed >> 13n)) * 0xc2b2ae35n) % word;
    yield Number(mixed ^ (mixed >> 16n)) / 2 ** 32;
  }
}

test.each([0, 1, 20270111, 4294967295])('the row of the seed %d is what it always was', (seed) => {
  const random = deviates(seed);
  const expected = row(seed);
  for (let i = 0; i < 50; i += 1) expect(random.uniform()).toBe(expected.next().value);
  const [a, b] = [expected.next().value as number, expected.next().value as number];
  expect(random.normal()).toBeCloseTo(Math.sqrt(-2 * Math.log(1 - a)) * Math.cos(2 * Math.PI * b), 12);
});

describe('chances', () => {
  const ends = [10, 20, 30, 40];
  test('the end that so many worlds keep', () => {
    expect([0, 0.25, 0.26, 0.5, 0.51, 0.75, 1].map((c) => endWithChance(ends, c))).toEqual([
      10, 10, 20, 20, 30, 30, 40,
    ]);
  });
  test('the share of worlds that have ended by a minute', () => {
    expect([9, 10, 25, 40].map((m) => chanceBy(ends, m))).toEqual([0, 0.25, 0.5, 1]);
  });
  const coat = madeUp({ id: 'coat', mechanism: 'two-part', marks: { sand: hours(10, 6, 20) } });
  const dry = (over: Partial<Extract<Link, { kind: 'dry' }>> = {}): Link => ({
    kind: 'dry',
    material: coat,
    mark: 'sand',
    film,
    air: still(23, 50),
    ...over,
  });
  const typical = (...chain: Link[]) => promised(t0, chain, 0.9, { seed: 1, worlds: 20 }).typical - t0;
  test('typical times add up; what a shop has learned counts, and a mark that a material lacks asks nothing', () => {
    expect(typical(dry(), { kind: 'then', map: shift(30) }, dry())).toBe(1230);
    expect(typical(dry({ factor: 1.5 }))).toBe(900);
    expect(typical(dry({ film: { ...film, thickness: 3 } }))).toBe(600);
    expect(typical(dry({ mark: 'cure' }), { kind: 'then', map: shift(30) })).toBe(30);
    const never: Link = { kind: 'then', map: { ...shift(0), at: () => NEVER } };
    expect(promised(t0, [never, dry()], 0.9, { seed: 1, worlds: 20 }).typical).toBe(NEVER);
    expect(simulateEnds(t0, [never, dry()], { seed: 1, worlds: 3 })).toEqual([NEVER, NEVER, NEVER]);
    expect(simulateEnds(t0, [dry({ mark: 'cure' })], { seed: 1, worlds: 3 })).toEqual([t0, t0, t0]);
    expect(
      simulateEnds(t0, [dry({ factor: 2 })], { seed: 1, worlds: 40 }).map((e) => Math.round((e - t0) / 2)),
    ).toEqual(simulateEnds(t0, [dry()], { seed: 1, worlds: 40 }).map((e) => expect.closeTo(e - t0, -0.5) as number));
  });
  test('two thousand worlds where nobody says how many', () => {
    expect(simulateEnds(t0, [dry()], { seed: 1 })).toHaveLength(2000);
  });
  test('coats from one can stray together, coats from two cans less: the variance of a sum', () => {
    const even = (id: string) => madeUp({ id, mechanism: 'two-part', marks: { sand: hours(10, 9, 10 / 0.9) } });
    const variance = (second: string) => {
      const chain = [dry({ material: even('a') }), dry({ material: even(second) })];
      const all = simulateEnds(t0, chain, { seed: 5, worlds: 4000, airDeviation: 0 }).map((e) => e - t0);
      const mean = all.reduce((x, y) => x + y) / all.length;
      return all.reduce((sum, e) => sum + (e - mean) ** 2, 0) / all.length;
    };
    // Half of each variance is the can’s: (2 · ½ + 2² · ½) to 2, three halves.
    expect(Math.abs(variance('a') / variance('b') - 1.5)).toBeLessThan(0.1);
  });
});

test('what never comes, never comes, whatever follows it', () => {
  const never: Link = { kind: 'then', map: { ...shift(0), at: () => NEVER } };
  const chain: Link[] = [never, { kind: 'then', map: shift(60) }];
  expect(new Set(simulateEnds(t0, chain, { seed: 1, worlds: 5 }))).toEqual(new Set([NEVER]));
  expect(promised(t0, chain, 0.9, { seed: 1, worlds: 5 })).toEqual({ typical: NEVER, safe: NEVER, chance: 0.9 });
});
