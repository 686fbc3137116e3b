import fc from '../../support/property.ts';
import { describe, expect, test } from 'vitest';
import { buyerCard } from '../../../src/reports/wall/card.ts';
import { bagLabels } from '../../../src/reports/wall/labels.ts';
import { textWidth, wrapped, wrappedWithin } from '../../../src/reports/wall/measure.ts';
import { wallWeek } from '../../../src/reports/wall/wall-week.ts';
import { weekAxis } from '../../../src/reports/wall/week-axis.ts';
import { localDay } from '../../../src/time/zone.ts';
import { bookOf, pieceOf, plan, planOf, span, stepOf, twelveSteps, when, ZONE } from '../calendar/made-shop.ts';
import { crowd, twelve, week } from './made-week.ts';

/** What the page says in its lines of text, and what it names its shapes. */
const isolates = /[\u2068\u2069]/g;
const unescaped = (text: string) =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');
const texts = (html: string) =>
  [...html.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map((m) => unescaped(m[1]!.replace(isolates, '')));
const shapeNames = (html: string) =>
  [...html.matchAll(/<g role="img" aria-label="([^"]*)">/g)].map((m) => unescaped(m[1]!));

describe('the page of the week', () => {
  const { html, pages } = wallWeek(twelve, week);

  test('names every span of work with its number, piece, step and times; the day sheet has the same number to tick', () => {
    const named = shapeNames(html);
    const works = named.filter((n) => /^\d+, /.test(n));
    expect(works).toHaveLength(twelveSteps.flatMap((s) => s.spans).length);
    expect(works).toContain('1, Oak table, top: Do sand, Fri Mar 12 10:00 to 12:30');
    expect(named.filter((n) => n === 'to tick when done')).toHaveLength(works.length);
    expect(pages).toBe(2);
  });

  test('names drying, windows, their shutting, the hand-over and the hours not fit for coating', () => {
    const named = shapeNames(html);
    expect(named).toContain('Oak table, top: drying, Fri Mar 12 14:45 to Sat Mar 13 09:00');
    expect(named).toContain(
      'Oak table, top: window for Do coat-2, coat 2 opens Sat Mar 13 09:00, shuts Sat Mar 13 12:15',
    );
    expect(named).toContain('Oak table, top: window shuts Sat Mar 13 12:15');
    expect(named).toContain('Oak table: ready to hand over Thu Mar 18 16:00 (90 %)');
    expect(named).toContain('Workshop not fit for coating Mon Mar 15 08:00 to 10:00: too cold');
  });

  test('says the care with the work, and that times are no permission', () => {
    const all = texts(html).join(' ');
    expect(all).toContain('Careful: Rags can heat themselves');
    expect(all).toContain('label and safety data sheet');
  });

  test('needs nothing from outside, runs nothing, and forbids both to itself', () => {
    expect(html).toMatch(/Content-Security-Policy" content="default-src 'none'; style-src 'sha256-[A-Za-z0-9+/=]+'/);
    expect(html).not.toMatch(/<script|<link|<img|<iframe|<object|<use|href=|src=|url\(|@import| on\w+=| style=/i);
  });
});

describe('nothing is cut in silence', () => {
  test('every piece of forty stands on a sheet, and each sheet says what is on the next', () => {
    const input = crowd(40);
    const { html } = wallWeek(input, week);
    const all = texts(html);
    const sheets = Number(/picture 1 of (\d+)/.exec(all.join('\n'))![1]);
    expect(sheets).toBeGreaterThan(1);
    expect(all.filter((t) => t.startsWith('On the next sheet:'))).toHaveLength(sheets - 1);
    const named = shapeNames(html).join('\n');
    for (const piece of input.book.pieces)
      for (const s of ['body', 'drawers', 'legs']) expect(named).toContain(`${piece.name}, ${s}: Lay`);
  });

  test('a day that goes on in the next column says so', () => {
    const all = texts(wallWeek(crowd(40), week).html);
    expect(all.some((t) => /^\w{3} Mar \d+, continued$/.test(t))).toBe(true);
  });

  test('pieces for which nothing happens are told', () => {
    const quiet = {
      ...twelve,
      plan: planOf(
        twelveSteps.filter((s) => s.piece !== 'stool'),
        twelve.plan.pieces,
      ),
    };
    expect(texts(wallWeek(quiet, week).html)).toContain('Nothing in these days for: Stool.');
  });

  test('wrapping keeps every letter, and no line is wider than it may be', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }), { maxLength: 12 }),
        (words) => {
          const text = words.join(' ').replace(/ +/g, ' ').trim();
          const lines = wrapped(text, 30, { size: 3 });
          expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
          for (const line of lines)
            if ([...new Intl.Segmenter().segment(line)].length > 1)
              expect(textWidth(line, { size: 3 })).toBeLessThanOrEqual(30);
        },
      ),
    );
  });

  test('what does not fit ends in …, what fits does not', () => {
    expect(wrappedWithin('one two three four five six', 12, { size: 3 }, 2).at(-1)).toMatch(/…$/);
    expect(wrappedWithin('one', 12, { size: 3 }, 2)).toEqual(['one']);
  });
});

describe('the axis', () => {
  const shop = bookOf().shop;

  test('runs forward through every minute of any week, the one with the changed clocks too, and fills its width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 1, max: 10 }), (plus, count) => {
        const days = Array.from({ length: count }, (_, i) => localDay(when('2020-01-06'), ZONE, plus + i));
        const axis = weekAxis(shop, days, [], 60, 200);
        expect([axis.x(axis.from), axis.x(axis.to)].map((x) => Math.round(x * 1e6) / 1e6)).toEqual([60, 260]);
        let last = -1;
        for (let minute = axis.from; minute <= axis.to; minute += 47) {
          expect(axis.x(minute)).toBeGreaterThan(last);
          last = axis.x(minute);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('gives an hour of work nine times the width of a closed one', () => {
    const axis = weekAxis(shop, week, [], 0, 200);
    const width = (from: string) => axis.x(when(from) + 60) - axis.x(when(from));
    expect(width('2027-03-15T09:00') / width('2027-03-15T22:00')).toBeCloseTo(9, 6);
  });
});

describe('hostile names', () => {
  const attack = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.constantFrom(
      '</text><script>alert(1)</script>',
      '" onload="alert(1)',
      "' x='",
      '&lt;',
      ']]>',
      '<!--',
      '\u202egnp.exe',
      '\u0000\u001b[31m',
      '\ud800',
      '</style><style>*{}',
    ),
  );

  test('stay text: the page has the same elements whatever the pieces are called', () => {
    const shape = (html: string) =>
      [...html.matchAll(/<\/?([a-z]+)/g)]
        .map((m) => m[1])
        .filter((n) => n !== 'text' && n !== 'g' && n !== 'rect' && n !== 'title');
    const paperFor = (name: string) => {
      const book = bookOf([pieceOf('p', name, ['top'])], { name });
      const step = stepOf('p/top/coat', [span('2027-03-12T10:00', '2027-03-12T10:30')], { title: name });
      const input = {
        plan: planOf([step], [{ id: 'p', name, lateHours: 0, ready: {} }]),
        book,
        unfit: [],
        cautions: new Map([['p/top/coat', [name]]]),
      };
      return [
        wallWeek(input, week),
        buyerCard(input, book.pieces[0]!, input.plan.pieces[0]!),
        bagLabels(book.pieces),
      ].map((p) => p.html);
    };
    /** Of each tag, what stands outside of its quotes: its attributes. */
    const attributes = (html: string) =>
      [...html.matchAll(/<[a-z][^>]*>/g)].flatMap(([tag]) =>
        [...tag.replaceAll(/"[^"]*"/g, '""').matchAll(/[^\s="<>/]+/g)].slice(1).map(([name]) => name),
      );
    const plain = paperFor('x').map((html) => new Set(shape(html)));
    const attributesOfPlain = new Set(paperFor('x').flatMap(attributes));
    expect(attributesOfPlain).toContain('aria-label');
    fc.assert(
      fc.property(attack, attack, (a, b) => {
        paperFor(`${a}${b}`).forEach((html, i) => {
          expect(new Set(shape(html))).toEqual(plain[i]);
          expect(attributes(html).filter((name) => !attributesOfPlain.has(name))).toEqual([]);

          expect(html).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066\u2067]|\p{Surrogate}/u);
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('the card and the labels', () => {
  test('the card says finish, hand-over, and what the piece can bear from when', () => {
    const piece = { ...twelve.book.pieces[0]!, mayCarryLead: true };
    const all = texts(buyerCard(twelve, piece, plan.pieces[0]!).html);
    expect(all).toContain('Water-borne enamel');
    expect(all).toContain('Ready to hand over: Thu Mar 18, 2027 (holds with 90 % chance)');
    expect(all).toContain('from Fri Apr 2, 2027');
    expect(all.join(' ')).toContain('may hold lead and was not tested');
  });

  test('a found lead test is said, whatever else the file says', () => {
    const piece = { ...twelve.book.pieces[0]!, mayCarryLead: true, leadTest: { minute: 0, found: true } };
    expect(texts(buyerCard(twelve, piece, plan.pieces[0]!).html).join(' ')).toContain('Lead was found');
  });

  test('each section has a label with its count, each piece one for its screws', () => {
    const all = texts(bagLabels([pieceOf('p', 'Chest', ['carcass', 'drawers'])]).html);
    expect(all).toEqual([
      'Chest',
      'carcass',
      '1 part',
      'Chest',
      'drawers',
      '3 parts',
      'Chest',
      'screws and fittings',
      'bag ___ of ___ · piece has 4 parts',
    ]);
  });
});
