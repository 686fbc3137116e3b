import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Place } from '../../src/schedule/places.ts';
import { seat, type Stay } from '../../src/schedule/seats.ts';

const station = (id: string, slots: number) => ({ id, name: id, room: 'workshop', kind: 'bench' as const, slots });
const place: Place = {
  room: 'workshop',
  kind: 'bench',
  stations: [station('short', 1), station('long', 2)],
  slots: 3,
};

const span = fc
  .tuple(fc.nat(40), fc.integer({ min: 1, max: 12 }))
  .map(([start, long]) => ({ start, until: start + long }));

/** How many of `stays` stand there at the fullest moment. */
function mostAt(stays: readonly Pick<Stay, 'start' | 'until'>[]): number {
  return Math.max(0, ...stays.map(({ start }) => stays.filter((s) => s.start <= start && start < s.until).length));
}

/** As many of the spans, in turn, as the place has room for at every moment. */
const anyStays: fc.Arbitrary<Stay[]> = fc
  .array(span, { minLength: 1, maxLength: 14 })
  .map((spans) =>
    spans
      .reduce<typeof spans>((kept, s) => (mostAt([...kept, s]) <= place.slots ? [...kept, s] : kept), [])
      .map((s, k) => ({ ...s, task: `task ${k}`, place })),
  );

const standingAt = (stays: readonly Stay[], stationOf: ReadonlyMap<string, string>, id: string) =>
  stays.filter((s) => stationOf.get(s.task) === id);

test('stays that never outnumber the slots each get one, wherever they would rather stand', () => {
  fc.assert(
    fc.property(anyStays, fc.array(fc.constantFrom('short', 'long', undefined)), (stays, wishes) => {
      const wishing = stays.map((s, k) => ({ ...s, ...(wishes[k] !== undefined && { wish: wishes[k] }) }));
      const stationOf = seat(wishing);
      for (const { id, slots } of place.stations)
        expect(mostAt(standingAt(stays, stationOf, id))).toBeLessThanOrEqual(slots);
    }),
  );
});

test('between stays that are certain, also those ahead, one more gets a station that is free for all of it, if there is one', () => {
  let found = 0;
  fc.assert(
    fc.property(anyStays, fc.nat(13), (stays, k) => {
      const own = stays[k % stays.length]!;
      const others = stays.filter((s) => s !== own);
      const certain = seat(others);
      const stationOf = seat([...others.map((s) => ({ ...s, fixed: certain.get(s.task)! })), own]);
      for (const other of others) expect(stationOf.get(other.task)).toBe(certain.get(other.task));
      const free = place.stations.filter(({ id, slots }) => {
        const met = standingAt(others, certain, id).filter((s) => s.start < own.until && own.start < s.until);
        return mostAt([...met, own]) <= slots;
      });
      if (free.length === 0) return;
      found += 1;
      expect(free.map((s) => s.id)).toContain(stationOf.get(own.task));
    }),
  );
  expect(found).toBeGreaterThan(50);
});
