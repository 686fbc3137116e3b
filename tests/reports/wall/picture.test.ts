import { describe, expect, test } from 'vitest';
import type { Look } from '../../../src/reports/look.ts';
import { namesOf } from '../../../src/reports/names.ts';
import { weekPicture } from '../../../src/reports/wall/picture.ts';
import { graphemes, widthOf } from '../../../src/terminal/width.ts';
import { bookOf, plan } from '../calendar/made-shop.ts';
import { crowd, week } from './made-week.ts';

const plainPaint = (text: string) => text;
const look = (columns: number, ascii: boolean): Look => ({
  columns,
  pictureColumns: columns,
  ascii,
  paint: { strong: plainPaint, quiet: plainPaint, good: plainPaint, warn: plainPaint, bad: plainPaint },
  widthOf,
  graphemes,
});
const book = bookOf();
const picture = (columns: number, ascii = false, days = week) =>
  weekPicture({ plan, shop: book.shop, names: namesOf(book), days, look: look(columns, ascii) });

describe('the week on a terminal', () => {
  test('shows each section as a row: work, drying, open windows, closed hours', () => {
    // A day of 24 hours is 17 cells of 84.7 minutes: 08:00 lies in cell 5, 10:00 in cell 7, 14:45 in cell 10.
    expect(picture(76, true, week.slice(0, 3))).toEqual([
      '                       Fri 12           |Sat 13           |Sun 14',
      'Oak table, top         .....  ####~~~~~~|~~~~~~=#~~~~~~~~~|~~~~~~~~~~~~~~~..',
      'Oak table, legs        .....     ## ....|...... ## .......|.................',
      'Pine washstand, body   .....      # ....|......    .......|.................',
      '# work  ~ drying  = window open  . closed',
      'Nothing in these days for: Stool.',
    ]);
  });

  test.each([40, 60, 80, 100, 200])('is never wider than %i columns, whatever the names', (columns) => {
    const input = crowd(20);
    for (const ascii of [true, false]) {
      const lines = weekPicture({
        plan: input.plan,
        shop: input.book.shop,
        names: namesOf(input.book),
        days: week,
        look: look(columns, ascii),
      });
      const rows = lines.slice(
        0,
        lines.findIndex((l) => l.includes('closed')),
      );
      expect(rows.length).toBeGreaterThan(40);
      expect(rows.filter((line) => widthOf(line) > columns)).toEqual([]);
    }
  });

  test('says how many days do not fit', () => {
    expect(picture(40).join('\n')).toContain('days do not fit this width');
  });
});
