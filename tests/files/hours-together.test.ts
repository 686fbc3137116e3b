// How long hands are in together, against every minute of the day counted one by one.
import { expect, it } from 'vitest';
import { longestTogether } from '../../src/files/cross-check/hours-together.ts';
import { weekdays, type ClockSpan, type Hours } from '../../src/model/shop.ts';
import { demo } from '../trade/shipped.ts';
import fc from '../support/property.ts';

const spans = fc
  .uniqueArray(fc.integer({ min: 0, max: 48 }), { minLength: 0, maxLength: 6 })
  .map((edges): ClockSpan[] => {
    const sorted = edges.map((e) => e * 30).sort((a, b) => a - b);
    return sorted.flatMap((from, i) =>
      i % 2 === 0 && sorted[i + 1] !== undefined ? [{ from, to: sorted[i + 1]! }] : [],
    );
  });
const hoursOn = (monday: readonly ClockSpan[]): Hours => ({
  week: Object.fromEntries(weekdays.map((day) => [day, day === 'monday' ? monday : []])) as unknown as Hours['week'],
  days: {},
});

/** Every group of hands, every first and last half hour. */
function counted(open: readonly ClockSpan[], hands: readonly (readonly ClockSpan[])[], people: number): number {
  const isIn = (of: readonly ClockSpan[], minute: number) => of.some((s) => s.from <= minute && minute < s.to);
  const groups = Array.from({ length: 2 ** hands.length }, (_, bits) => hands.filter((_, i) => (bits >> i) % 2 === 1));
  const lengths = groups
    .filter((group) => group.length === people)
    .map((group) => {
      let [longest, running] = [0, 0];
      for (let minute = 0; minute < 24 * 60; minute += 30) {
        running = [open, ...group].every((of) => isIn(of, minute)) ? running + 30 : 0;
        longest = Math.max(longest, running);
      }
      return longest;
    });
  return Math.max(0, ...lengths);
}

it('is the longest stretch that the same people share with the open shop', () => {
  const { shop } = demo();
  fc.assert(
    fc.property(spans, fc.array(spans, { maxLength: 4 }), fc.integer({ min: 1, max: 3 }), (open, hands, people) => {
      const there = hands.map((of, i) => ({ id: `hand-${i}`, name: '', skills: [], hours: hoursOn(of) }));
      const longest = longestTogether({ ...shop, opening: hoursOn(open), hands: there }, undefined, people);
      expect(longest).toBe(counted(open, hands, people));
    }),
  );
});
