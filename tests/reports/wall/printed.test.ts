import { describe, expect, test } from 'vitest';
import { localDay } from '../../../src/time/zone.ts';
import { ZONE } from '../calendar/made-shop.ts';
import { buyerCard } from '../../../src/reports/wall/card.ts';
import { bagLabels } from '../../../src/reports/wall/labels.ts';
import { wallWeek, type Paper } from '../../../src/reports/wall/wall-week.ts';
import { chromium, measured, printed, withoutChromium, type Box } from './chromium.ts';
import { crowd, twelve, week } from './made-week.ts';

const forty = crowd(40);
const fortnight = Array.from({ length: 14 }, (_, plus) => localDay(week[0]!.start, ZONE, plus));
const card = (input: typeof forty) => buyerCard(input, input.book.pieces[0]!, input.plan.pieces[0]!);
const papers: readonly (readonly [string, Paper])[] = [
  ['a week of three pieces', wallWeek(twelve, week)],
  ['a week of forty pieces in many scripts', wallWeek(forty, week)],
  ['a single day', wallWeek(crowd(10), week.slice(0, 1))],
  ['two weeks without anything', wallWeek({ ...twelve, plan: { ...twelve.plan, steps: [] } }, fortnight)],
  ['a card', card(twelve)],
  ['a card with a long name', card(forty)],
  ['labels', bagLabels(forty.book.pieces)],
];

/** Printing is slow: one wide page, many, and one upright. */
const toPrint = papers.filter((_, i) => i === 0 || i === 1 || i === 5);

/** Pairs of texts on one page that lie on each other by more than a hair. */
function overlaps(boxes: readonly Box[]): string[] {
  const hair = 0.25;
  // A line's box holds the room for accents above and below its letters; these are set closer than that.
  const inner = boxes.map((b) => ({
    ...b,
    top: b.top + (b.bottom - b.top) * 0.25,
    bottom: b.bottom - (b.bottom - b.top) * 0.22,
  }));
  return inner.flatMap((a, i) =>
    inner.slice(i + 1).flatMap((b) => {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const tall = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      return a.page === b.page && wide > hair && tall > hair ? [`page ${a.page}: "${a.text}" and "${b.text}"`] : [];
    }),
  );
}

describe.skipIf(chromium === undefined)(
  `pages as a browser lays them out${chromium === undefined ? ` (${withoutChromium})` : ''}`,
  () => {
    test.each(papers)(
      '%s: no text lies on another or leaves its page',
      async (_, paper) => {
        const { boxes, pages } = await measured(paper.html);
        expect(pages).toHaveLength(paper.pages);
        expect(boxes.length).toBeGreaterThan(3);
        const outside = boxes.filter((b) => {
          const [width, height] = pages[b.page]!;
          return b.left < -0.3 || b.right > width + 0.3 || b.top < -1 || b.bottom > height + 1;
        });
        expect(outside.map((b) => b.text)).toEqual([]);
        expect(overlaps(boxes)).toEqual([]);
      },
      180_000,
    );

    // ISO 216 A4 is 210 × 297 mm; US Letter is 8.5 × 11 in, 216 × 279 mm.
    test.each(toPrint)(
      '%s: prints on as many sheets as it says, of A4 and of Letter',
      async (_, paper) => {
        const isWide = paper.html.includes('size: landscape');
        const sheet = { A4: [210, 297], letter: [216, 279] } as const;
        for (const size of ['A4', 'letter'] as const) {
          const sizes = await printed(paper.html, size);
          const [short, long] = sheet[size];
          expect(sizes).toEqual(Array.from({ length: paper.pages }, () => (isWide ? [long, short] : [short, long])));
        }
      },
      180_000,
    );
  },
);
