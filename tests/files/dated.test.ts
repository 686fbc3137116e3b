import { describe, expect, test } from 'vitest';
import { backFrom } from '../../src/model/away.ts';
import { isoOf } from '../../src/time/zone.ts';
import { pieceYaml, readWith, shopYaml, told } from './shop-folder.ts';

const zone = 'Europe/Dublin';
const iso = (span: { readonly start: number; readonly end: number }) =>
  `${isoOf(span.start, zone)} ${isoOf(span.end, zone)}`;
const withHand = (rest: string) => ({
  'shop.yaml': shopYaml.replace('{ skills: spray }', `{ skills: spray, ${rest} }`),
});
const withEnd = (rest: string) => ({ 'shop.yaml': `${shopYaml}${rest}` });
const withRoom = (rest: string) => ({ 'shop.yaml': shopYaml.replace('rh: 50 % } }', `rh: 50 % } }, ${rest}`) });
const withAway = (rest: string) => ({ 'pieces/chair.yaml': `${pieceYaml}away: ${rest}\n` });

describe('days off', () => {
  test('a day, days, and part of a day', () => {
    const off = '[2027-02-01 - 2027-02-02, 2027-01-18, 2027-01-20T13:00 - 2027-01-20T17:30]';
    const { book, findings } = readWith(withHand(`off: ${off}`));
    expect(findings).toEqual([]);
    expect(book!.shop.hands[0]!.off!.map(iso)).toEqual([
      '2027-01-18T00:00:00+00:00 2027-01-19T00:00:00+00:00',
      '2027-01-20T13:00:00+00:00 2027-01-20T17:30:00+00:00',
      '2027-02-01T00:00:00+00:00 2027-02-03T00:00:00+00:00',
    ]);
  });

  test('a day of 23 hours ends at its own midnight', () => {
    const { book } = readWith(withHand('off: 2027-03-28'));
    expect(book!.shop.hands[0]!.off).toEqual([
      expect.objectContaining({ end: book!.shop.hands[0]!.off![0]!.start + 23 * 60 }),
    ]);
  });

  test.each([
    ['off: tuesday', 'bad-stretch'],
    ['off: 2027-02-30', 'bad-stretch'],
    ['off: 2027-01-20T13:00', 'bad-stretch'],
    ['off: 2027-02-05 - 2027-02-01', 'bad-stretch'],
    ['of: 2027-02-05', 'unknown-key'],
  ])('%s is refused where it stands', (text, code) => {
    const column = '  owner: { skills: spray, '.length + (code === 'unknown-key' ? 1 : 'off: '.length + 1);
    expect(told(readWith(withHand(text)))).toEqual([`shop.yaml:12:${column} error ${code}`]);
  });
});

describe('appointments', () => {
  const visit = (rest: string) => `appointments:\n  - { at: 2027-01-20T10:00, lasts: 45 min, what: Delivery${rest} }\n`;

  test('everyone takes part where nobody is named; a piece is wanted by when it is taken', () => {
    const { book, findings } = readWith(withEnd(visit(', takes: chair')));
    expect(findings).toEqual([]);
    const [found] = book!.shop.appointments!;
    expect(iso(found!)).toBe('2027-01-20T10:00:00+00:00 2027-01-20T10:45:00+00:00');
    expect(found!.hands).toEqual(['owner']);
    expect(book!.pieces[0]!.wantedBy).toBe(found!.start);
  });

  test('a piece that is brought arrives no sooner; an earlier date that it is wanted by stands', () => {
    const wanted = { 'pieces/chair.yaml': `${pieceYaml}arrives: 2027-01-10\nwanted-by: 2027-01-19T12:00\n` };
    const later = { 'pieces/chair.yaml': `${pieceYaml}arrives: 2027-01-10\nwanted-by: 2027-01-29\n` };
    const brought = readWith({ ...withEnd(visit(', brings: chair')), ...later }).book!;
    expect(brought.pieces[0]!.arrives).toBe(brought.shop.appointments![0]!.end);
    const taken = readWith({ ...withEnd(visit(', takes: chair')), ...wanted }).book!;
    expect(isoOf(taken.pieces[0]!.wantedBy!, zone)).toBe('2027-01-19T12:00:00+00:00');
  });

  test.each([
    [', hands: [owner, onwer]', 'unknown-hand', 'did you mean owner?'],
    [', takes: chiar', 'unknown-piece', 'did you mean chair?'],
    [', brings: chiar', 'unknown-piece', 'did you mean chair?'],
  ])('%s is told where it stands', (rest, code, advice) => {
    const read = readWith(withEnd(visit(rest)));
    expect(told(read)).toEqual([expect.stringMatching(new RegExp(`^shop.yaml:14:\\d+ error ${code}$`))]);
    expect(read.findings[0]!.advice).toBe(advice);
  });
});

describe('a room that is hired', () => {
  test('its hours are those of single days, or of a week', () => {
    const { book, findings } = readWith(withRoom('open: { 2027-01-21: 08:00-18:00 }'));
    expect(findings).toEqual([]);
    expect(book!.shop.rooms[0]!.open!.days).toEqual({ '2027-01-21': [{ from: 8 * 60, to: 18 * 60 }] });
    expect(readWith({}).book!.shop.rooms[0]!.open).toBeUndefined();
  });

  test('what is no day is told', () => {
    expect(readWith(withRoom('open: { thusday: 08:00-18:00 }')).findings[0]!.advice).toBe('did you mean thursday?');
  });
});

describe('a piece away', () => {
  test('from the beginning of a day to the end of the day that it is promised back', () => {
    const { book, findings } = readWith(withAway('{ from: 2027-01-18, to: 2027-01-20, at: Upholsterer }'));
    expect(findings).toEqual([]);
    const [piece] = book!.pieces;
    expect(iso(piece!.away![0]!)).toBe('2027-01-18T00:00:00+00:00 2027-01-21T00:00:00+00:00');
    expect(backFrom(piece!)).toBe(piece!.away![0]!.end);
  });

  test('one section, more than once', () => {
    const stays = '[{ from: 2027-01-18, to: 2027-01-19, at: A }, { from: 2027-01-25, to: 2027-01-26T12:00, at: B }]';
    const text = pieceYaml.replace('area: 1 m2', `area: 1 m2, away: ${stays}`);
    const { book, findings } = readWith({ 'pieces/chair.yaml': text });
    expect(findings).toEqual([]);
    expect(book!.pieces[0]!.sections[0]!.away!.map((a) => a.at)).toEqual(['A', 'B']);
  });

  test.each([
    ['{ from: 2027-01-20, to: 2027-01-18, at: Upholsterer }', 'pieces/chair.yaml:4:7 error bad-away'],
    ['{ from: 2027-01-18, at: Upholsterer }', 'pieces/chair.yaml:4:7 error missing-key'],
    ['{ from: soon, to: 2027-01-18, at: Upholsterer }', 'pieces/chair.yaml:4:15 error bad-time'],
  ])('%s is refused', (text, finding) => {
    expect(told(readWith(withAway(text)))).toEqual([finding]);
  });
});
