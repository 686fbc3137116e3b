import { expect, test } from 'vitest';
import { at } from '../../src/at.ts';
import { type Hours, weekdays } from '../../src/model/shop.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { demo } from '../trade/shipped.ts';

const shutAllWeek = Object.fromEntries(weekdays.map((day) => [day, []])) as unknown as Hours['week'];
const wholeDay = [{ from: 0, to: 24 * 60 }];

test('a spray room hired for some days is one more choice: who had a plan before has one with it', () => {
  const book = demo();
  const { shop } = book;
  const open: Hours = {
    week: shutAllWeek,
    days: { '2027-01-21': wholeDay, '2027-01-22': wholeDay, '2027-01-23': wholeDay, '2027-01-24': wholeDay },
  };
  const hired = {
    ...book,
    pieces: book.pieces.filter((piece) => piece.id === 'pine-washstand'),
    shop: {
      ...shop,
      rooms: [
        ...shop.rooms,
        { id: 'booth', name: 'Hired booth', air: { kind: 'constant' as const, tempC: 19, rhPercent: 55 }, open },
      ],
      stations: [
        ...shop.stations,
        { ...at(shop.stations, 0), id: 'bay', name: 'Bay', room: 'booth', kind: 'spray' as const, slots: 4 },
      ],
    },
  };
  const now = minuteAt('2027-01-11', 7 * 60 + 30, shop.timeZone);
  expect(hired.pieces).toHaveLength(1);
  expect(makePlan(situationOf(hired, now), { seed: 1 }).kind).toBe('plan');
});
