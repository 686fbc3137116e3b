import { describe, expect, test } from 'vitest';
import type { Situation } from '../../src/model/situation.ts';
import type { Piece } from '../../src/model/piece.ts';
import type { Shop } from '../../src/model/shop.ts';
import { verify } from '../../src/verify/verify.ts';
import { planWith, situation } from './base.ts';
import { evidenceOf, on, shop } from './fixture.ts';

// The plan of base.ts keeps every rule; each case takes a time away from it that it uses, or only nearly uses.

const withShop = (change: Partial<Shop>): Situation => ({
  ...situation,
  book: { ...situation.book, shop: { ...shop, ...change } },
});
const off = (hand: string, start: number, end: number) =>
  withShop({ hands: shop.hands.map((h) => (h.id === hand ? { ...h, off: [{ start, end }] } : h)) });
const engaged = (hands: readonly string[], start: number, end: number) =>
  withShop({ appointments: [{ start, end, what: 'delivery', hands, brings: [], takes: [] }] });
const withDesk = (change: (desk: Piece) => Piece): Situation => ({
  ...situation,
  book: { ...situation.book, pieces: situation.book.pieces.map((p) => (p.id === 'desk' ? change(p) : p)) },
});
const away = (start: number, end: number) => [{ start, end, at: 'Upholsterer' }];
const closed = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
const hired = (days: Readonly<Record<string, { from: number; to: number }[]>>) =>
  withShop({ rooms: shop.rooms.map((r) => (r.id === 'spray-room' ? { ...r, open: { week: closed, days } } : r)) });

/** Each broken rule with the step that it is about, once. */
function broken(of: Situation): string[] {
  return [...new Set(verify(evidenceOf(of), planWith()).map((b) => `${b.rule} ${b.steps[0] ?? ''}`))];
}

describe('a good plan breaks where', () => {
  test('somebody is off, or has an appointment', () => {
    // The owner sands 08:00-09:00 on Monday, then sprays until 09:30; the helper glues 09:00-09:15.
    expect(broken(off('owner', on('mon', '08:30'), on('mon', '08:31')))).toEqual(['hours desk/top/sand']);
    expect(broken(off('owner', on('mon', '07:00'), on('mon', '08:00')))).toEqual([]);
    expect(broken(off('helper', on('mon', '08:30'), on('mon', '09:00')))).toEqual([]);
    expect(broken(engaged(['helper'], on('mon', '09:00'), on('mon', '09:15')))).toEqual(['hours desk/legs/glue']);
    expect(broken(engaged(['owner'], on('mon', '09:30'), on('mon', '13:30')))).toEqual([]);
    expect(broken(engaged(['friend'], on('mon', '09:00'), on('mon', '09:15')))).toEqual([]);
  });

  test('one of two is off for the part of their work that comes after a break', () => {
    expect(broken(off('friend', on('tue', '10:00'), on('tue', '10:30')))).toEqual(['hours chair/seat/carve']);
    expect(broken(off('friend', on('mon', '17:00'), on('tue', '09:00')))).toEqual([]);
  });

  test('the piece or the section is away, or is not yet safe to move when it leaves', () => {
    // The second coat, over at 15:00 on Monday, may be moved from 01:00 on Tuesday; then the top is looked at from 08:00.
    const top = (start: number, end: number) =>
      withDesk((d) => ({
        ...d,
        sections: d.sections.map((s) => (s.id === 'top' ? { ...s, away: away(start, end) } : s)),
      }));
    expect(broken(top(on('tue', '01:00'), on('tue', '08:00')))).toEqual([]);
    expect(broken(top(on('tue', '00:59'), on('tue', '08:00')))).toEqual(['stay desk/top/coat-2']);
    expect(broken(top(on('tue', '01:00'), on('tue', '08:01')))).toEqual(['stay desk/top/inspect']);
    const all = (start: number, end: number) => withDesk((d) => ({ ...d, away: away(start, end) }));
    expect(broken(all(on('tue', '08:30'), on('tue', '08:40')))).toEqual(['stay desk/legs/unmask']);
  });

  test('the piece is handed over before it is back', () => {
    const late = withDesk((d) => ({ ...d, away: away(on('tue', '12:00'), on('wed', '12:00')) }));
    expect(verify(evidenceOf(late), planWith()).map((b) => b.text)).toEqual([
      expect.stringContaining('is not over and dry before Wed 2027-01-13 12:00'),
    ]);
  });

  test('a room cannot be had until what stands in it is safe to move', () => {
    // The booth is used from 09:00 on Monday until the second coat is safe to move at 01:00 on Tuesday.
    const hours = (from: number, to: number) => ({ from: from * 60, to: to * 60 });
    expect(broken(hired({ '2027-01-11': [hours(9, 24)], '2027-01-12': [hours(0, 1)] }))).toEqual([]);
    expect(broken(hired({ '2027-01-11': [hours(9, 24)] }))).toEqual(['stay desk/top/coat-2']);
    expect(broken(hired({ '2027-01-11': [hours(10, 24)], '2027-01-12': [hours(0, 1)] }))).toEqual([
      'stay desk/top/coat-1',
    ]);
    // The room is given back and taken again while a coat dries in it.
    expect(broken(hired({ '2027-01-11': [hours(9, 18), hours(19, 24)], '2027-01-12': [hours(0, 1)] }))).toEqual([
      'stay desk/top/coat-1',
      'stay desk/top/coat-2',
    ]);
  });
});
