import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { drybench, type Surroundings } from './run-cli.ts';
import { inShop, pieceFile, shopFile } from './small-shop.ts';

// In a pipe a record is a line, whatever the names and the width; the oracle is what the same command says with --json.

const zone = 'Europe/Dublin';
const clockOf = (instant: string) =>
  new Date(instant).toLocaleTimeString('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
const dateOf = (instant: string) => {
  const part = (options: Intl.DateTimeFormatOptions) =>
    new Date(instant).toLocaleDateString('en-GB', { timeZone: zone, ...options });
  return `${part({ weekday: 'short' })} ${part({ day: 'numeric' })} ${part({ month: 'short' })}`;
};

interface Span {
  readonly start: string;
  readonly end: string;
}
interface Step {
  readonly id: string;
  readonly piece: string;
  readonly title: string;
  readonly coat?: number;
  readonly spans: readonly Span[];
}
interface Ready {
  readonly safe: string;
}
interface Piece {
  readonly id: string;
  readonly name: string;
  readonly ready: Readonly<Record<string, Ready>>;
}
interface Documents {
  readonly steps: readonly Step[];
  readonly pieces: readonly Piece[];
  readonly now: readonly (Piece & { readonly handedOver: Ready })[];
  readonly variants: readonly { readonly said: string }[];
  readonly chain: readonly { readonly step: string; readonly start: string }[];
  readonly items: readonly {
    readonly name: string;
    readonly toBuy: number;
    readonly uses: readonly { readonly step: string }[];
  }[];
  readonly kinds: readonly { readonly kind: string; readonly pieces: number }[];
  readonly findings: readonly {
    readonly place: { readonly file: string; readonly line: number; readonly column: number };
    readonly message: string;
    readonly severity: string;
  }[];
}

/** What stands in each record, in the order of the lines; names of pieces by their id. */
type Records = (document: Documents, names: ReadonlyMap<string, string>) => readonly (readonly string[])[];

const coated = ({ title, coat }: Step) => (coat === undefined ? title : `${title}, coat ${coat}`);

const workOf: Records = ({ steps }, names) =>
  steps
    .flatMap((step) => step.spans.map((span) => ({ step, span })))
    .toSorted((a, b) => Date.parse(a.span.start) - Date.parse(b.span.start))
    .map(({ step, span }) => [
      `${clockOf(span.start)}–${clockOf(span.end)}`,
      names.get(step.piece) ?? '?',
      coated(step),
    ]);

interface Table {
  readonly asked: readonly string[];
  readonly records: Records;
  /** The lines of an answer that are to be its records. */
  readonly rowsOf: (text: string) => readonly string[];
}

const lines = (isRow: (line: string) => boolean) => (text: string) => text.split('\n').filter(isRow);
const timed = (line: string) => /^ *\d\d:\d\d–\d\d:\d\d/.test(line);

/** What stands under the head of a table, up to the next empty line. */
const below = (head: RegExp) => (text: string) => {
  const all = text.split('\n');
  const at = all.findIndex((line) => head.test(line));
  const end = all.indexOf('', at);
  return at < 0 ? [] : all.slice(at + 1, end);
};

const tables: readonly Table[] = [
  { asked: ['week', '--look', '--days', '60'], records: workOf, rowsOf: lines(timed) },
  { asked: ['today'], records: workOf, rowsOf: lines(timed) },
  {
    asked: ['ready'],
    records: ({ pieces }) =>
      pieces.map(({ name, ready }) => [
        name,
        `${dateOf(ready['handedOver']!.safe)} ${clockOf(ready['handedOver']!.safe)}`,
      ]),
    rowsOf: below(/^hand over /),
  },
  {
    asked: ['ready', '--all'],
    records: ({ pieces }) => pieces.map(({ name, ready }) => [name, clockOf(ready['handedOver']!.safe)]),
    rowsOf: below(/^from /),
  },
  {
    asked: ['ready', 'stool'],
    // Dry marks as they come true, then what the shop does.
    records: ({ pieces: [piece] }) => {
      const { listed, handedOver, ...marks } = piece!.ready;
      const dry = Object.values(marks).toSorted((a, b) => Date.parse(a.safe) - Date.parse(b.safe));
      return [...dry, listed!, handedOver!].map(({ safe }) => [clockOf(safe)]);
    },
    rowsOf: below(/^ +from then on/),
  },
  {
    asked: ['why', 'stool', 'paint-2'],
    records: ({ chain }, names) =>
      chain.map(({ step, start }) => [clockOf(start), names.get(step.split('/')[0]!) ?? '?', ' · because ']),
    rowsOf: lines((line) => line.includes(' · because ')),
  },
  {
    asked: ['buy', '--steps'],
    records: ({ items }, names) =>
      items
        .filter((item) => item.toBuy > 0)
        .map(({ name, uses }) => [
          name.split(', ')[0]!,
          ...uses.map(({ step }) => names.get(step.split('/')[0]!) ?? '?'),
        ]),
    rowsOf: below(/^ +by /),
  },
  { asked: ['price'], records: ({ pieces }) => pieces.map(({ name }) => [name]), rowsOf: below(/ cost so far/) },
  {
    asked: ['price'],
    records: ({ kinds }) => kinds.map(({ kind, pieces }) => [kind, String(pieces)]),
    rowsOf: below(/^ +kind /),
  },
  {
    asked: ['compare', '--warmer', 'shed=+3K', '--warmer', 'workshop=+2K'],
    records: ({ now }) => now.map(({ name, handedOver }) => [name, clockOf(handedOver.safe)]),
    rowsOf: below(/^safe hand-over/),
  },
];

const at = ['--at', '2027-01-11T07:30'];

async function piped(words: readonly string[], surroundings: Surroundings): Promise<string> {
  const { out } = await drybench([...words, ...at], surroundings);
  return out;
}

/** Names without what is said otherwise in a table: a comma ends the short name of a material. */
const word = fc.string({
  unit: fc.constantFrom('a', 'e', 'k', 'l', 'r', 'w', 'ß', '漢', '1'),
  minLength: 1,
  maxLength: 14,
});
const longName = fc.array(word, { minLength: 1, maxLength: 30 }).map((parts) => `N ${parts.join(' ')}`);

const shopOf = ([stool, chair, station, step]: readonly string[], owner: string) => ({
  'shop.yaml':
    shopFile
      .replace('kind: bench, slots: 2', `kind: bench, slots: 2, name: "${station!}"`)
      .replace('name: Owner', `name: "${owner}"`) + 'prices: { water-borne-acrylic-enamel: 30 EUR for 1 L }\n',
  'pieces/stool.yaml': pieceFile(`"${stool!}"`),
  'pieces/chair.yaml': pieceFile(`"${chair!}"`).replace('kind: stool', 'kind: chair'),
  'recipes/brushed.yaml': `name: Brushed
about: Invented for these tests.
source: common practice, no source
steps:
  - step: scuff
    do: "${step!}"
    stage: sand
    time: 30 min
    at: bench
    grit: 180
    caution: "${step!}"
  - step: paint
    do: Brush a thin even coat
    stage: topcoat
    time: 40 min
    at: bench
    material: water-borne-acrylic-enamel
    coats: 2
    supplies: [tack-cloth]
`,
});

describe('in a pipe', () => {
  it('each record is one line, as many as with --json, whatever the names and the width', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(longName, { minLength: 4, maxLength: 4 }),
        longName,
        fc.constantFrom(undefined, '40', '80'),
        (names, owner, columns) =>
          inShop(shopOf(names, owner), async (folder) => {
            const env: Record<string, string> = columns === undefined ? {} : { COLUMNS: columns };
            const called = new Map([
              ['stool', names[0]!],
              ['chair', names[1]!],
            ]);
            for (const { asked, records, rowsOf } of tables) {
              const document = JSON.parse(await piped([...asked, '--json'], { folder })) as Documents;
              const expected = records(document, called);
              const rows = rowsOf(await piped(asked, { folder, env }));
              expect(expected.length).toBeGreaterThan(0);
              expect([asked, rows.length]).toEqual([asked, expected.length]);
              rows.forEach((row, i) => {
                for (const text of expected[i]!) expect(row).toContain(text);
              });
            }
          }),
      ),
      { numRuns: 8 },
    ));

  it('each finding begins with a line that holds its place and all of its message', () =>
    inShop(
      { 'pieces/stool.yaml': `${pieceFile('Stool')}${'colour-of-the-room'.repeat(8)}: no\nkind: 3\n` },
      async (folder) => {
        const { findings } = JSON.parse((await drybench(['check', '--json'], { folder })).out) as Documents;
        const { out } = await drybench(['check'], { folder, env: { COLUMNS: '40' } });
        expect(findings.length).toBeGreaterThan(1);
        const told = findings.map(
          ({ place, severity, message }) => `${place.file}:${place.line}:${place.column}: ${severity}: ${message}`,
        );
        expect(out.split('\n').filter((line) => /^[^ ]+:\d+:\d+: /.test(line))).toEqual(told);
      },
    ));
});
