import { expect, test } from 'vitest';
import { firstDown, firstUp, mapOf } from '../../src/drying/first-minute.ts';
import { oncePer } from '../../src/once-per.ts';
import { ALWAYS, NEVER } from '../../src/time/time-map.ts';
import fc from '../support/property.ts';

const range = fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.nat(5000), fc.integer({ min: -200, max: 5200 }));

test('the first minute at which something holds, looked for from either end, and never asked for outside', () => {
  fc.assert(
    fc.property(range, ([low, length, offset]) => {
      const high = low + length;
      const edge = low + offset;
      const asked: number[] = [];
      const holds = (m: number): boolean => {
        asked.push(m);
        return m >= edge;
      };
      const expected = Math.min(high + 1, Math.max(low, edge));
      expect(firstUp(low, high, holds)).toBe(expected);
      expect(firstDown(low, high, holds)).toBe(expected);
      expect(asked.every((m) => m >= low && m <= high)).toBe(true);
    }),
    { numRuns: 300 },
  );
});

test('an end that a step falls on is asked, too', () => {
  for (const length of [0, 1, 63, 64, 65, 192, 448])
    for (const edge of [0, 1, length, length + 1]) {
      expect(firstDown(0, length, (m) => m >= edge)).toBe(Math.min(edge, length + 1));
      expect(firstUp(0, length, (m) => m >= edge)).toBe(Math.min(edge, length + 1));
    }
});

test('near where it begins it finds it with few questions', () => {
  const questions = (search: typeof firstUp, edge: number): number => {
    let count = 0;
    search(0, 1_000_000, (m) => {
      count += 1;
      return m >= edge;
    });
    return count;
  };
  expect(questions(firstUp, 0)).toBe(1);
  expect(questions(firstUp, 500_000)).toBeLessThan(40);
  expect(questions(firstUp, 100)).toBeLessThan(12);
  expect(questions(firstDown, 999_900)).toBeLessThan(12);
  expect(questions(firstDown, 500_000)).toBeLessThan(40);
});

test('a map of a function has its exact inverses', () => {
  const steps = fc.array(fc.nat(40), { minLength: 30, maxLength: 60 });
  fc.assert(
    fc.property(steps, fc.nat(50), (waits, k) => {
      // Who comes later is never served earlier: the latest of all until then.
      const image = (t: number): number => {
        let most = t;
        for (let m = 0; m <= Math.min(t, waits.length - 1); m += 1) most = Math.max(most, m + (waits[m] ?? 0));
        return most;
      };
      const map = mapOf(image);
      const all = Array.from({ length: 200 }, (_, i) => i - 50);
      const latest = all.filter((t) => image(t) <= k).at(-1);
      const earliest = all.find((t) => image(t) >= k);
      expect(map.at(k)).toBe(image(k));
      expect(map.latest(k)).toBe(latest);
      expect(map.earliest(k)).toBe(earliest);
    }),
  );
  const never = mapOf((t) => Math.max(t, NEVER));
  expect(never.latest(5)).toBe(ALWAYS);
  expect(never.latest(NEVER)).toBe(NEVER);
  expect(mapOf((t) => t).earliest(NEVER + 1)).toBe(NEVER);
  expect(mapOf((t) => t).earliest(NEVER)).toBe(NEVER);
  const later = mapOf((t) => t + 5);
  expect([later.latest(NEVER), later.latest(NEVER + 1), later.earliest(NEVER)]).toEqual([NEVER, NEVER, NEVER - 5]);
});

test('work is done once for each thing and what is asked of it', () => {
  const done: string[] = [];
  const once = oncePer(
    (thing: { name: string }, asked: { size: number }) => {
      done.push(`${thing.name} ${asked.size}`);
      return asked.size * 2;
    },
    ({ size }) => size,
  );
  const [a, b] = [{ name: 'a' }, { name: 'b' }];
  expect([once(a, { size: 1 }), once(a, { size: 1 }), once(a, { size: 2 }), once(b, { size: 1 })]).toEqual([
    2, 2, 4, 2,
  ]);
  expect(done).toEqual(['a 1', 'a 2', 'b 1']);
  const plain = oncePer((_: object, asked: number) => ({ asked }));
  expect(plain(a, 1)).toBe(plain(a, 1));
  expect(plain(a, 1)).not.toBe(plain(a, 2));
});
