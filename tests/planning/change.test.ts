import fc from '../support/property.ts';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { at } from '../../src/at.ts';
import { openSpans } from '../../src/model/hours.ts';
import type { AirSource } from '../../src/model/shop.ts';
import { changed, drierAir, hoursAskedFor, warmerAir } from '../../src/planning/change.ts';
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
