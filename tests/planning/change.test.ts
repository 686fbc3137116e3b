import fc from '../support/property.ts';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { roomAir } from '../../src/air/room-air.ts';
import { airAt } from '../../src/air/series.ts';
import { at } from '../../src/at.ts';
import { freeSpans, openSpans } from '../../src/model/hours.ts';
import type { AirSource } from '../../src/model/shop.ts';
import { changed, drierAir, hoursAskedFor, warmerAir } from '../../src/planning/change.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { intersect, lengthOf } from '../../src/time/span.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { anyBook, zone } from '../support/random-shop.ts';

const SEA_LEVEL_PA = 101_325;

test('a warmer room holds the same water: humidity ratio after PsychroLib', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  const ratio = (tempC: number, rhPercent: number) =>
    psychrolib.GetHumRatioFromRelHum(tempC, rhPercent / 100, SEA_LEVEL_PA);
  fc.assert(
    fc.property(
      fc.double({ min: 2, max: 30, noNaN: true }),
      fc.double({ min: 10, max: 95, noNaN: true }),
      fc.double({ min: 0, max: 15, noNaN: true }),
      (tempC, rhPercent, byK) => {
        const warmer = warmerAir({ kind: 'constant', tempC, rhPercent }, byK);
        if (warmer.kind !== 'constant') throw new Error('another kind of air');
        expect(warmer.tempC).toBeCloseTo(tempC + byK, 9);
        expect(ratio(warmer.tempC, warmer.rhPercent) / ratio(tempC, rhPercent)).toBeCloseTo(1, 2);
      },
    ),
    { seed: 1, numRuns: 100 },
  );
});

test('a dried room is never damper than that, and heated air is dried no less than before', () => {
  const daily: AirSource = {
    kind: 'daily',
    curve: [50, 40, 80].map((rhPercent, i) => ({ clock: i * 60, tempC: 18, rhPercent })),
  };
  expect(drierAir(daily, 45)).toEqual({
    ...daily,
    curve: [45, 40, 45].map((rhPercent, i) => ({ clock: i * 60, tempC: 18, rhPercent })),
  });
  const heated = { kind: 'heated', outdoors: daily, setPoints: [{ clock: 0, tempC: 18 }], lagHours: 2 } as const;
  expect(drierAir(heated, 45)).toEqual({ ...heated, driedToRhPercent: 45 });
  expect(drierAir({ ...heated, driedToRhPercent: 40 }, 45)).toEqual({ ...heated, driedToRhPercent: 40 });
  expect(warmerAir(heated, 3)).toEqual({ ...heated, setPoints: [{ clock: 0, tempC: 21 }] });
});

const saturday = '2027-01-16';
const morning = { from: 8 * 60, to: 12 * 60 };
const dayStart = minuteAt(saturday, 0, zone);
const day = { start: dayStart, end: dayStart + 1440 };

test('a helper on a closed day works then, and nobody else works more', () => {
  fc.assert(
    fc.property(anyBook(2, 3), (book) => {
      const { shop } = changed(book, { kind: 'helper', date: saturday, spans: [morning] });
      const workedBy = (which: typeof shop, index: number) =>
        lengthOf(
          intersect(
            intersect(
              openSpans(which.opening, zone, day.start, day.end + 6 * 1440),
              openSpans(at(which.hands, index).hours, zone, day.start, day.end + 6 * 1440),
            ),
            [{ start: day.start, end: day.end + 6 * 1440 }],
          ),
        );
      expect(workedBy(shop, book.shop.hands.length)).toBe(240);
      book.shop.hands.forEach((_, i) => {
        expect(workedBy(shop, i)).toBe(workedBy(book.shop, i));
      });
    }),
    { seed: 1, numRuns: 30 },
  );
});

test('other changes change what they name and nothing else', () => {
  const book = at(fc.sample(anyBook(2, 3), { seed: 3, numRuns: 1 }), 0);
  const more = changed(book, { kind: 'slot', station: 'floor', more: 1 });
  expect(more.shop.stations.map((s, i) => s.slots - at(book.shop.stations, i).slots)).toEqual([0, 0, 1, 0]);
  expect(changed(more, { kind: 'slot', station: 'floor', more: -1 })).toEqual(book);
  expect(changed(book, { kind: 'without', piece: 'piece-1' }).pieces).toEqual(book.pieces.slice(1));
  const other = changed(book, { kind: 'instead', piece: 'piece-1', section: 'body', recipe: 'two' });
  expect(other.pieces[0]?.sections.map((s) => s.recipe)[0]).toBe('two');
  const paint = changed(book, { kind: 'material', piece: 'piece-1', section: 'body', old: 'paint', now: 'enamel' });
  expect(paint.pieces[0]?.sections[0]?.materials).toEqual({ paint: 'enamel' });
  expect(hoursAskedFor({ kind: 'open', date: saturday, spans: [morning] })).toBe(4);
  expect(hoursAskedFor({ kind: 'without', piece: 'piece-1' })).toBe(0);
});

test('warmer or drier for a while: then, and only then, whatever the air comes from', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  const ratio = (air: { readonly tempC: number; readonly rhPercent: number }) =>
    psychrolib.GetHumRatioFromRelHum(air.tempC, air.rhPercent / 100, SEA_LEVEL_PA);
  const start = minuteAt(saturday, 0, zone);
  const during = { start: start + 300, end: start + 600 };
  fc.assert(
    fc.property(anyBook(2, 3), fc.nat(24 * 60), (book, minute) => {
      const room = at(book.shop.rooms, 0);
      const airOf = (change: Parameters<typeof changed>[1]) => {
        const source = at(changed(book, change).shop.rooms, 0).air;
        // What is asked for is on a quarter of an hour, where the air is known and not read between two samples.
        return airAt(roomAir(source, zone, start, start + 2880), start + 15 * Math.floor(minute / 15));
      };
      const usual = airAt(roomAir(room.air, zone, start, start + 2880), start + 15 * Math.floor(minute / 15));
      const then = minute >= 300 && minute < 600;
      const warmer = airOf({ kind: 'warmer', room: room.id, byK: 4, during });
      expect(warmer.tempC).toBeCloseTo(usual.tempC + (then ? 4 : 0), 9);
      expect(ratio(warmer) / ratio(usual)).toBeCloseTo(1, 2);
      const drier = airOf({ kind: 'drier', room: room.id, toRhPercent: 30, during });
      expect(drier).toEqual({ ...usual, rhPercent: then ? Math.min(30, usual.rhPercent) : usual.rhPercent });
    }),
    { seed: 3, numRuns: 60 },
  );
});

test('a hand of the shop is in on a day off and before the shop opens, and nobody else with it', () => {
  fc.assert(
    fc.property(anyBook(2, 3), (book) => {
      const hand = at(book.shop.hands, 0);
      const span = { start: minuteAt(saturday, 5 * 60, zone), end: minuteAt(saturday, 7 * 60, zone) };
      const off = [{ start: minuteAt(saturday, 0, zone), end: minuteAt(saturday, 23 * 60, zone) }];
      const away = { ...book, shop: { ...book.shop, hands: [{ ...hand, off }, ...book.shop.hands.slice(1)] } };
      const spans = [{ from: 5 * 60, to: 7 * 60 }];
      const { shop } = changed(away, { kind: 'in', hand: hand.id, date: saturday, spans });
      const workedBy = (h: (typeof shop.hands)[number]) =>
        lengthOf(
          intersect(
            intersect(freeSpans(shop, h, span.start, span.end), openSpans(shop.opening, zone, span.start, span.end)),
            [span],
          ),
        );
      expect(shop.hands.map((h) => (workedBy(h) > 0 ? h.id : ''))).toEqual(
        shop.hands.map((h) => (h.id === hand.id ? h.id : '')),
      );
      expect(workedBy(at(shop.hands, 0))).toBe(120);
    }),
    { seed: 4, numRuns: 40 },
  );
});

test('what was put off is no longer, once that is taken back', () => {
  const book = at(fc.sample(anyBook(1, 3), { seed: 5, numRuns: 1 }), 0);
  const { tasks, now } = situationOf(book, minuteAt(saturday, 0, zone));
  const [first, second] = [at(tasks, 0).id, at(tasks, 1).id];
  const journal = [first, second, first].map((task, i) => ({
    number: i + 1,
    at: now,
    deed: { kind: 'slipped', task, until: now + 1440 * (i + 1) } as const,
  }));
  const later = situationOf(changed({ ...book, journal }, { kind: 'not-put-off', task: first }), now);
  expect([...later.notBefore]).toEqual([[second, now + 2880]]);
});
