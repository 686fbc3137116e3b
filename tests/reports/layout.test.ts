import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { cut, grid, painted, paragraph, wrap } from '../../src/reports/layout.ts';
import { widthOf } from '../../src/terminal/width.ts';
import { look } from './sample.ts';

const stars = (text: string) => `*${text}*`;

test('columns are as wide as their content, numbers to the right, no blanks at the end', () => {
  const rows = [
    ['9:00', 'body', ''],
    ['10:30', 'a leg', 'sand'],
  ];
  expect(grid(rows, [{ align: 'right' }, {}, {}], look(80), 2)).toEqual(['   9:00  body', '  10:30  a leg  sand']);
});

test('paint goes on after measuring and takes no room', () => {
  expect(
    grid(
      [
        [painted(stars, 'a'), 'b'],
        ['ccc', painted(stars, '')],
      ],
      [{}, {}],
      look(80),
    ),
  ).toEqual(['*a*    b', 'ccc']);
});

test('what does not fit goes on below in its own column', () => {
  expect(grid([['08:00', 'Spray an even wet coat']], [{}, {}], look(22))).toEqual([
    '08:00  Spray an even',
    '       wet coat',
  ]);
});

test('a date stays together, where there is room for it', () => {
  expect(wrap('no later than Wed 27 Jan 16:25', 22, look(80))).toEqual(['no later than', 'Wed 27 Jan 16:25']);
  expect(wrap('coat again from Wed Jan 13 3:17 pm', 26, look(80))).toEqual(['coat again from Wed Jan 13', '3:17 pm']);
  expect(wrap('until Wed 13 Jan', 9, look(80))).toEqual(['until Wed', '13 Jan']);
});

test('a number and its unit stay together', () => {
  expect(wrap('it needs 20 °C and 1 h 30 min', 17, look(80))).toEqual(['it needs 20 °C', 'and 1 h 30 min']);
  expect(wrap('from 8:30 am on, 5 deg C', 9, look(80))).toEqual(['from', '8:30 am', 'on,', '5 deg C']);
  expect(wrap('abierto 8:00 a. m.–12:30 p. m.', 13, look(80))).toEqual(['abierto', '8:00 a. m.–', '12:30 p. m.']);
  expect(wrap('las 8:00 a.\u00a0m.', 10, look(80))).toEqual(['las', '8:00 a. m.']);
  expect(wrap('coat 2 has dried', 8, look(80))).toEqual(['coat 2', 'has', 'dried']);
});

test('wide letters count as they show', () => {
  expect(
    grid(
      [
        ['漢字', 'x'],
        ['abcd', 'y'],
        ['e\u0301', 'z'],
      ],
      [{}, {}],
      look(80),
    ),
  ).toEqual(['漢字  x', 'abcd  y', 'e\u0301     z']);
});

test('signs of ours turn to ASCII before they are measured', () => {
  expect(
    grid(
      [
        ['08:00–09:00 …', 'x'],
        ['123456', 'y'],
      ],
      [{}, {}],
      look(80, true),
    ),
  ).toEqual(['08:00-09:00 ...  x', '123456           y']);
});

test('a paragraph hangs under its first line', () => {
  expect(paragraph('one two three four', look(30), 2, (t) => t, 4)).toEqual(['  one two three four']);
  expect(paragraph('one two three four five six seven', look(30), 0, (t) => t, 4)).toEqual([
    'one two three four five',
    '    six seven',
  ]);
});

const words = fc.array(fc.string({ unit: fc.constantFrom('a', 'b', '漢', 'e\u0301', '\u{1f600}'), maxLength: 12 }), {
  maxLength: 12,
});

test('wrapping loses no letter and keeps to the width', () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 2, max: 30 }), (parts, columns) => {
      const lines = wrap(parts.join(' '), columns, look(80));
      expect(lines.join('').replaceAll(' ', '')).toBe(parts.join(''));
      for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(columns);
    }),
  );
});

test('cutting keeps to the width and tells that it cut', () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 2, max: 30 }), (parts, columns) => {
      const text = parts.join(' ');
      const short = cut(text, columns, look(80));
      expect(widthOf(short)).toBeLessThanOrEqual(columns);
      expect(short === text || (short.endsWith('…') && text.startsWith(short.slice(0, -1)))).toBe(true);
    }),
  );
});

test('to a reader by line a row is a line, with all that stands in it', () => {
  const cell = fc.array(
    words.map((w) => w.join(' ')),
    { maxLength: 4 },
  );
  const columns = [{ most: 4 }, { align: 'right' as const }, {}];
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell, cell)), fc.boolean(), (rows, ascii) => {
      const lines = grid(rows, columns, look(Infinity, ascii), 2);
      expect(lines).toHaveLength(rows.length);
      const letters = (text: string) => text.replaceAll(/[ ·,]/g, '');
      expect(lines.map(letters)).toEqual(rows.map((row) => letters(row.flat().join(''))));
    }),
  );
});

test('a grid keeps to the screen whatever stands in it', () => {
  const cell = words.map((w) => w.join(' '));
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell, cell)), fc.integer({ min: 40, max: 120 }), (rows, columns) => {
      for (const line of grid(rows, [{}, {}, {}], look(columns), 2)) {
        expect(widthOf(line)).toBeLessThanOrEqual(columns);
        expect(line).not.toMatch(/ $/);
      }
    }),
  );
});
