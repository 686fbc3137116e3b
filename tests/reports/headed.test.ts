import fc from '../support/property.ts';
import { expect, it } from 'vitest';
import { headed } from '../../src/reports/headed.ts';
import type { Column } from '../../src/reports/layout.ts';
import { look } from './sample.ts';

const columns: Column[] = [{ whole: true }, { least: 8 }, { align: 'right' }];
const head = ['by', 'what', 'needed so far'];
const row = (name: string, ...more: string[]) => ['Wed 13 Jan', [name, ...more], '12.50 L'];

it('names are cut short, figures never, and a word says how to see the names', () => {
  expect(headed([head, row('Water-borne acrylic enamel'), row('Milk paint')], columns, look(40), 2, 1)).toEqual([
    '  by          what                needed',
    '                                  so far',
    '  Wed 13 Jan  Water-borne acry…  12.50 L',
    '  Wed 13 Jan  Milk paint         12.50 L',
    '  … stands for more: --width 55 shows it',
  ]);
});

it('before a table becomes a list it begins at the edge', () => {
  const begins = (wide: number) => headed([head, row('Milk paint')], columns, look(wide), 2, 1).at(-1);
  expect(begins(33)).toBe('  Wed 13 Jan  Milk paint  12.50 L');
  expect(headed([head, row('Milk paint')], columns, look(30), 2, 1)).toContain('Wed 13 Jan  Milk pai…  12.50 L');
});

it('what says more of a row stands under it, over the whole width', () => {
  const lines = headed(
    [head, row('Milk paint', 'for the box and its lid, and again for the chairs')],
    columns,
    look(40),
    2,
    1,
  );
  expect(lines.slice(-2)).toEqual(['    for the box and its lid, and again', '      for the chairs']);
});

it('where there is no room for figures each row is a list; to a reader by line, it is a line', () => {
  const rows = [head, row('Milk paint', 'for the box')];
  expect(headed(rows, columns, look(24), 0, 1)[0]).toBe('Milk paint');
  expect(headed(rows, columns, look(Infinity), 0, 1)).toHaveLength(2);
});

it('each row is one line that fits, or a list that says all of it', () => {
  const name = fc.string({ unit: fc.constantFrom('a', 'b', ' ', 'é', '漢', '-'), minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(fc.array(name, { minLength: 1, maxLength: 5 }), fc.integer({ min: 40, max: 120 }), (names, wide) => {
      const screen = look(wide);
      const lines = headed([head, ...names.map((n) => row(n))], columns, screen, 2, 1);
      expect(lines.filter((line) => screen.widthOf(line) > wide)).toEqual([]);
      expect(lines.filter((line) => line.includes('12.50 L'))).toHaveLength(names.length);
    }),
  );
});
