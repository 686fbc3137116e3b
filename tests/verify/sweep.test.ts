import { expect, test } from 'vitest';
import { overloads, type Claim } from '../../src/verify/sweep.ts';
import fc from '../support/property.ts';

const claim = (step: string, start: number, end: number, holder = step): Claim => ({ step, holder, start, end });

test('of two that begin at once the one that lasts longer is too much, in whatever order they stand', () => {
  const [long, short] = [claim('long', 0, 10), claim('short', 0, 5)];
  const found = [{ at: 0, holders: 2, steps: ['long', 'short'] }];
  expect(overloads([long, short], 1)).toEqual(found);
  expect(overloads([short, long], 1)).toEqual(found);
});

test('what takes no time takes no place', () => {
  expect(overloads([claim('a', 0, 10), claim('b', 5, 5)], 1)).toEqual([]);
  expect(overloads([claim('a', 5, 5), claim('b', 5, 5)], 1)).toEqual([]);
});

test('there is an overload just where at some minute more holders are there than there is room for', () => {
  const any = fc.array(
    fc
      .record({ start: fc.nat(30), length: fc.integer({ min: -2, max: 12 }), holder: fc.nat(4) })
      .map(({ start, length, holder }): Claim =>
        claim(`${start}/${length}/${holder}`, start, start + length, `h${holder}`),
      ),
    { maxLength: 12 },
  );
  const seen = { over: 0, under: 0 };
  fc.assert(
    fc.property(any, fc.integer({ min: 1, max: 3 }), (claims, capacity) => {
      const minutes = Array.from({ length: 50 }, (_, m) => m);
      const heldAt = (m: number) => new Set(claims.filter((c) => c.start <= m && m < c.end).map((c) => c.holder)).size;
      const found = overloads(claims, capacity);
      expect(found.length > 0).toBe(minutes.some((m) => heldAt(m) > capacity));
      for (const { at, holders } of found) expect(holders).toBeLessThanOrEqual(heldAt(at));
      seen[found.length > 0 ? 'over' : 'under'] += 1;
    }),
    { numRuns: 500 },
  );
  expect(Math.min(seen.over, seen.under)).toBeGreaterThan(5);
});
