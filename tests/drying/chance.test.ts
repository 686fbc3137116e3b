import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { chanceBy, endWithChance, promised, simulateEnds, type Link } from '../../src/drying/chance.ts';
import { deviates } from '../../src/drying/random.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import { airAt } from '../../src/air/series.ts';
import { shift, type TimeMap } from '../../src/time/time-map.ts';
import { dailySwing, film, hours, madeUp, still, t0 } from './arbitrary.ts';

const coat = madeUp({
  id: 'coat',
  mechanism: 'oxidation',
  activationKJPerMol: 50,
  marks: { sand: hours(10, 6, 20), cure: hours(48, 30, 90) },
});
const shed = dailySwing(40, 17, 8, 55);
const dry = (mark: 'sand' | 'cure'): Link => ({ kind: 'dry', material: coat, mark, film, air: shed });
const chain: Link[] = [
  dry('sand'),
  { kind: 'then', map: shift(90) },
  dry('sand'),
  { kind: 'then', map: shift(60) },
  dry('cure'),
];

/**
 * Worlds drawn by another road than the one under test: another generator (Lehmer 1951, 16807 modulo 2^31 - 1), normals by
 * Marsaglia's polar method, and drying counted minute by minute.
 */
function otherWorlds(count: number): number[] {
  let state = 20_270_111;
  const uniform = () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
  const normal = (): number => {
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const s = x * x + y * y;
      if (s > 0 && s < 1) return x * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
  const { rate } = rateLaw(coat, 'sand');
  const speed = Float64Array.from({ length: 39 * 1440 }, (_, m) => {
    const { tempC, rhPercent } = airAt(shed, t0 + m + 0.5);
    return rate(tempC, rhPercent) / 60;
  });
  const sides = { sand: [10, 6, 20], cure: [48, 30, 90] } as const;
  return Array.from({ length: count }, () => {
    const airFactor = Math.exp(0.1 * normal());
    const can = normal();
    let minute = 0;
    for (const step of ['sand', 90, 'sand', 60, 'cure'] as const) {
      if (typeof step === 'number') {
        minute += step;
        continue;
      }
      const z = (can + normal()) / Math.SQRT2;
      const [typical, low, high] = sides[step];
      let left =
        typical * Math.exp((Math.log((z < 0 ? typical : high) / (z < 0 ? low : typical)) * z) / 1.6449) * airFactor;
      while (left > 0) {
        left -= speed[minute] ?? 0;
        minute += 1;
      }
    }
    return t0 + minute;
  });
}

describe('a date that is said to hold with a chance', () => {
  it('of 90 % does so in 88 to 92 % of worlds drawn independently', () => {
    const { safe, typical } = promised(t0, chain, 0.9, { seed: 7, worlds: 4000 });
    const worlds = otherWorlds(4000);
    const share = worlds.filter((end) => end <= safe).length / worlds.length;
    expect(share).toBeGreaterThan(0.88);
    expect(share).toBeLessThan(0.92);
    expect(typical).toBeLessThan(safe);
  });

  it('of 50 % and of 75 % does so too', () => {
    const ends = simulateEnds(t0, chain, { seed: 11, worlds: 4000 });
    const worlds = otherWorlds(4000);
    for (const chance of [0.5, 0.75]) {
      const share = worlds.filter((end) => end <= endWithChance(ends, chance)).length / worlds.length;
      expect(Math.abs(share - chance)).toBeLessThan(0.025);
    }
  });

  it('is the same for the same seed, and later for a higher chance', () => {
    const ends = simulateEnds(t0, chain, { seed: 3, worlds: 500 });
    expect(simulateEnds(t0, chain, { seed: 3, worlds: 500 })).toEqual(ends);
    expect(simulateEnds(t0, chain, { seed: 4, worlds: 500 })).not.toEqual(ends);
    expect(endWithChance(ends, 0.95)).toBeGreaterThan(endWithChance(ends, 0.8));
    expect(chanceBy(ends, endWithChance(ends, 0.8))).toBeGreaterThanOrEqual(0.8);
    expect(chanceBy(ends, t0)).toBe(0);
  });

  it('is certain where nothing is uncertain', () => {
    const sure = madeUp({ mechanism: 'oxidation', marks: { sand: hours(10) } });
    const links: Link[] = [{ kind: 'dry', material: sure, mark: 'sand', film, air: still(23, 50) }];
    expect(promised(t0, links, 0.9, { seed: 1, airDeviation: 0, worlds: 50 })).toEqual({
      typical: t0 + 600,
      safe: t0 + 600,
      chance: 0.9,
    });
  });

  it('waits for what a map says, e.g. the next morning', () => {
    const morning: TimeMap = { ...shift(0), at: (t) => t0 + 1440 * Math.ceil((t - t0) / 1440) };
    const ends = simulateEnds(t0, [dry('sand'), { kind: 'then', map: morning }], { seed: 5, worlds: 200 });
    expect(ends.every((end) => (end - t0) % 1440 === 0)).toBe(true);
  });
});

describe('deviates', () => {
  it('are spread evenly, and normally', () => {
    const random = deviates(42);
    const n = 40_000;
    const uniforms = Array.from({ length: n }, () => random.uniform());
    for (let tenth = 0; tenth < 10; tenth += 1) {
      const share = uniforms.filter((u) => Math.floor(u * 10) === tenth).length / n;
      expect(Math.abs(share - 0.1)).toBeLessThan(0.01);
    }
    const normals = Array.from({ length: n }, () => random.normal());
    const mean = normals.reduce((a, b) => a + b, 0) / n;
    expect(Math.abs(mean)).toBeLessThan(0.03);
    expect(normals.reduce((a, b) => a + (b - mean) ** 2, 0) / n).toBeCloseTo(1, 1);
    expect(normals.filter((z) => z < 1.645).length / n).toBeCloseTo(0.95, 2);
  });

  it('lie within their bounds for any seed', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const u = deviates(seed).uniform();
        expect(u >= 0 && u < 1).toBe(true);
      }),
    );
  });
});
