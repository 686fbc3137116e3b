import { expect, test } from 'vitest';
import { readAirCsv } from '../../src/air/read-air-csv.ts';
import { placeAt } from '../../src/files/source-text.ts';
import fc from '../support/property.ts';

test('a place has its line and the ones around it, whatever ends a line', () => {
  const line = fc.string({ unit: fc.constantFrom('a', 'b', '名', ' '), maxLength: 6 });
  const all = fc.array(line, { minLength: 1, maxLength: 6 });
  const end = fc.constantFrom('\n', '\r\n', '\r');
  fc.assert(
    fc.property(all, end, fc.boolean(), fc.nat(), (lines, newline, endsWithOne, pick) => {
      const index = pick % lines.length;
      const text = lines.join(newline) + (endsWithOne ? newline : '');
      const offset = lines.slice(0, index).reduce((sum, before) => sum + before.length + newline.length, 0);
      const { text: shown, before, after, line: number } = placeAt({ file: 'shop.yaml', text }, offset);
      const last = endsWithOne || lines.at(-1) !== '' ? lines.length : lines.length - 1;
      fc.pre(index < Math.max(1, last));
      expect([number, before, shown, after]).toEqual([
        index + 1,
        lines[index - 1],
        lines[index],
        index + 1 < last ? lines[index + 1] : undefined,
      ]);
    }),
  );
});

test('a fault in a record of air has the rows around it', () => {
  const rows = ['time,temp_c,rh', '2027-01-11T07:00,8.5,82', '2027-01-11T08:00,8.7,half', '2027-01-11T09:00,8.9,81'];
  const places = (text: string) => readAirCsv(text, 'Europe/Dublin', 'air/garage.csv').findings.map((f) => f.place);
  expect(places(`${rows.join('\n')}\n`)).toMatchObject([{ line: 3, text: rows[2], before: rows[1], after: rows[3] }]);
  expect(places(`${rows.slice(0, 3).join('\n')}\n`)[0]).not.toHaveProperty('after');
});
