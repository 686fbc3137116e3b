import { expect, test } from 'vitest';
import { learn, learnDrying, observationOf, type Observation } from '../../src/drying/learn.ts';
import fc from '../support/property.ts';
import { film, hours, madeUp, still, t0 } from './arbitrary.ts';

/** The normal distribution by Simpson's rule, from the mean on. */
function below(z: number): number {
  const n = 400;
  const step = z / n;
  let sum = 0;
  for (let i = 0; i <= n; i += 1)
    sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-((i * step) ** 2) / 2);
  return 0.5 + (sum * step) / 3 / Math.sqrt(2 * Math.PI);
}

/** Bayes' rule on a grid of its own, with the same doubt about each look (a thousandth) as is told of in the source. */
function byBayes(looks: readonly Observation[], prior: number, look: number) {
  let [all, first, second] = [0, 0, 0];
  for (let x = -1.386; x <= 1.386; x += 0.003) {
    let weight = Math.exp(-((x / prior) ** 2) / 2);
    for (const { kind, seen, expected } of looks) {
      const z = (Math.log(seen / expected) - x) / look;
      weight *=
        kind === 'at' ? Math.exp(-(z * z) / 2) + 1e-6 : below(Math.max(-8, Math.min(8, kind === 'by' ? z : -z))) + 1e-3;
    }
    all += weight;
    first += weight * x;
    second += weight * x * x;
  }
  const mean = first / all;
  return { factor: Math.min(2, Math.max(0.5, Math.exp(mean))), deviation: Math.sqrt(second / all - mean * mean) };
}

test('what is learned is what Bayes’ rule says, by another grid and another integral', () => {
  const look = fc.record({
    kind: fc.constantFrom<Observation['kind']>('at', 'by', 'not-yet'),
    expected: fc.constant(10),
    seen: fc.double({ min: 3, max: 30, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(look, { minLength: 1, maxLength: 6 }), fc.constantFrom(0.1, 0.3), (looks, prior) => {
      const learned = learn(looks, prior);
      const other = byBayes(looks, prior, 0.2);
      expect(learned.factor).toBeCloseTo(other.factor, 3);
      expect(learned.deviation).toBeCloseTo(other.deviation, 3);
      expect(learned.count).toBe(looks.length);
    }),
    { numRuns: 60 },
  );
});

test('thousands of looks speak as clearly as one', () => {
  const looks = (...seen: number[]) =>
    Array.from({ length: 5000 }, (_, i): Observation => ({ kind: 'at', expected: 10, seen: seen[i % seen.length]! }));
  expect(learn(looks(13), 0.3).factor).toBeCloseTo(1.3, 2);
  // Also where they do not agree: the middle of their logarithms.
  expect(learn(looks(11, 15), 0.3).factor).toBeCloseTo(Math.sqrt(1.1 * 1.5), 2);
});

test('a look that says nothing does not count', () => {
  const good: Observation = { kind: 'at', expected: 10, seen: 13 };
  const alone = learn([good], 0.3);
  for (const bad of [
    { ...good, expected: 0 },
    { ...good, seen: 0 },
    { ...good, seen: -1 },
    { ...good, expected: -1 },
  ])
    expect(learn([good, bad], 0.3)).toEqual(alone);
  expect(learn([{ ...good, seen: 0 }], 0.3)).toMatchObject({ factor: 1, count: 0 });
  expect(learn([], 0.3).deviation).toBeCloseTo(0.3, 2);
});

test('the prior of a material is its sheet’s own spread, and a tenth at least', () => {
  const look: Observation = { kind: 'at', expected: 10, seen: 14 };
  const wide = { low: 5, typical: 10, high: 20 };
  expect(learnDrying(wide, [look])).toEqual(learn([look], Math.log(4) / (2 * 1.6448536269514722)));
  expect(learnDrying(hours(10), [look])).toEqual(learn([look], 0.1));
});

test('a sighting: which mark it speaks of, and what it says of it', () => {
  const marks = { 'dust-free': hours(1), touch: hours(4), sand: hours(8), handle: hours(24) };
  const of = (over: object, seen: Parameters<typeof observationOf>[4], mm = 1) =>
    observationOf(
      madeUp({ mechanism: 'oxidation', marks, ...over }),
      { ...film, thickness: mm },
      still(23, 50),
      t0,
      seen,
    );
  const at = t0 + 300;
  const told = (kind: string, expected: number) => ({ kind, expected, seen: expect.closeTo(5, 6) as number });
  expect(of({}, { at, sighting: 'wet' })).toEqual(told('not-yet', 1));
  expect(of({}, { at, sighting: 'tacky' })).toEqual(told('not-yet', 4));
  expect(of({}, { at, sighting: 'dry' })).toEqual(told('by', 4));
  expect(of({}, { at, sighting: 'hard' })).toEqual(told('by', 24));
  expect(of({}, { at, sighting: 'dry', mark: 'sand' })).toEqual(told('by', 8));
  expect(of({}, { at, sighting: 'dry' }, 2)).toEqual(told('by', 16));
  expect(of({}, { at: t0, sighting: 'dry' })).toBeUndefined();
  expect(of({}, { at: t0 + 1, sighting: 'dry' })).toMatchObject({ kind: 'by' });
  expect(of({ marks: {} }, { at, sighting: 'dry' })).toBeUndefined();
  // What it has gained is counted from when it was finished.
  const later = observationOf(madeUp({ mechanism: 'oxidation', marks }), film, still(23, 50), t0 + 120, {
    at,
    sighting: 'dry',
  });
  expect(later?.seen).toBeCloseTo(3, 6);
});
