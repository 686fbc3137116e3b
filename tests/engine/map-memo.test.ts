import { expect, test } from 'vitest';
import { memoOf } from '../../src/engine/map-memo.ts';
import { mapOf } from '../../src/drying/first-minute.ts';
import fc from '../support/property.ts';

const hours = fc.array(fc.nat(900), { minLength: 1, maxLength: 12 });

/** A map that waits now longer, now shorter, and counts how often it is asked. */
function counting(waits: readonly number[]) {
  const asked = { times: 0 };
  const ready = (t: number) => {
    const spans = waits.map((wait, k) => ({ from: k * 700, until: k * 700 + wait }));
    return spans.reduce((most, { from, until }) => (t >= from ? Math.max(most, until) : most), t);
  };
  const own = mapOf(ready);
  const map = mapOf((t) => {
    asked.times += 1;
    return ready(t);
  });
  return { own, map, asked };
}

const stretch = fc.record({ from: fc.integer({ min: -3000, max: 9000 }), minutes: fc.nat(5000) });

test('over stretch after stretch the memory of a map says what the map says', () => {
  fc.assert(
    fc.property(
      hours,
      fc.array(fc.tuple(stretch, fc.array(fc.integer({ min: -4000, max: 15_000 }), { maxLength: 6 })), {
        maxLength: 5,
      }),
      (waits, turns) => {
        const { own, map } = counting(waits);
        for (const [{ from, minutes }, times] of turns) {
          const memo = memoOf(map, from, from + minutes);
          for (const t of [...times, from, from + minutes]) {
            expect(memo.at(t)).toBe(own.at(t));
            expect(memo.latest(t)).toBe(own.latest(t));
            expect(memo.earliest(t)).toBe(own.earliest(t));
          }
        }
      },
    ),
    { numRuns: 300 },
  );
});

test('what was asked in one stretch is known in the next that holds it, or begins before it', () => {
  fc.assert(
    fc.property(hours, stretch, stretch, fc.nat(5000), (waits, one, other, into) => {
      const { map, asked } = counting(waits);
      const t = one.from + Math.min(into, one.minutes);
      memoOf(map, one.from, one.from + one.minutes).at(t);
      const before = asked.times;
      memoOf(map, other.from, other.from + other.minutes).at(t);
      expect(asked.times).toBe(before);
    }),
  );
});
