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
  readonly typical: string;
  readonly safe: string;
  readonly chance: number;
}
interface Sums {
  readonly soFar: string;
  readonly toCome: string;
  readonly atEnd: string;
}
interface Account extends Piece {
  readonly purchase: string;
  readonly materials: Sums;
  readonly overhead: Sums;
  readonly cost: Sums;
  readonly days: { readonly soFar: number; readonly toCome: number };
  readonly losesBelow: string;
  readonly priceHopedFor: string;
  readonly sellingFee: string;
  readonly margin: string;
  readonly earnedPerBenchHour: string;
  readonly earnedPerDayHeld: string;
}
interface Hour {
  readonly time: string;
  readonly tempC: number;
  readonly rhPercent: number;
  readonly dewPointC: number;
  readonly speed: Readonly<Record<string, number>>;
}
interface Offer {
  readonly ready: Ready;
  readonly delayed: readonly { readonly name: string; readonly wantedBy: string }[];
}
interface Piece {
  readonly id: string;
  readonly name: string;
  readonly ready: Readonly<Record<string, Ready>>;
}
interface Documents {
  readonly steps: readonly Step[];
  readonly pieces: readonly Account[];
  readonly now: readonly (Piece & { readonly handedOver: Ready })[];
  readonly variants: readonly { readonly said: string }[];
  readonly chain: readonly { readonly step: string; readonly start: string }[];
  readonly items: readonly {
    readonly name: string;
    readonly toBuy: number;
    readonly uses: readonly { readonly step: string }[];
  }[];
  readonly rooms: readonly { readonly name: string; readonly hours: readonly Hour[] }[];
  readonly by: string;
  readonly kept: boolean;
  readonly offer: Offer;
  readonly sooner?: Offer;
  readonly sections: readonly {
    readonly name: string;
    readonly recipe: string;
    readonly areaM2: number;
    readonly without: readonly string[];
    readonly with?: readonly { readonly part: string }[];
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

/** What a line of the air of a room begins with: its name, a day, or what is drawn. */
const airRow = / · now |^\w{3} \d+ \w{3}(?:,|$)|^ {2}(?:temperature|humidity|dew point|water dries|fit for coating) /;

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

/** What stands behind the empty line that ends such a table. */
const after = (last: RegExp) => (text: string) => {
  const all = text.split('\n');
  const from = all.findIndex((line) => last.test(line)) + 2;
  return from < 2 ? [] : all.slice(from, all.indexOf('', from));
};

/** What a day of a room's air is drawn and said of: the least and the most of its hours. */
function rangeOf(hours: readonly Hour[], of: (hour: Hour) => number, say: (value: number) => string): string {
  const [low, high] = [Math.min, Math.max].map((edge) => say(edge(...hours.map(of)))) as [string, string];
  return low === high ? low : `${low} to ${high}`;
}

const degrees = (value: number) => `${value.toFixed(0)} °C`;
const times = (value: number) => `${value.toFixed(1)} ×`;

const airOf: Records = ({ rooms }) =>
  rooms.flatMap(({ name, hours }) => {
    const days = [...new Set(hours.map(({ time }) => dateOf(time)))];
    const byDay = days.map((date) => [date, hours.filter(({ time }) => dateOf(time) === date)] as const);
    return [
      [name, ' · now '],
      ...byDay.flatMap(([date, ofDay]) => [
        [date],
        ['temperature', rangeOf(ofDay, (h) => h.tempC, degrees)],
        [
          'humidity',
          rangeOf(
            ofDay,
            (h) => h.rhPercent,
            (v) => `${v.toFixed(0)} %`,
          ),
        ],
        ['dew point', rangeOf(ofDay, (h) => h.dewPointC, degrees)],
        ['water dries', rangeOf(ofDay, (h) => h.speed['water']!, times)],
        ['fit for coating'],
      ]),
    ];
  });

const momentOf = (instant: string) => `${dateOf(instant)} ${clockOf(instant)}`;
const deadlineOf = (instant: string) => (clockOf(instant) === '23:59' ? dateOf(instant) : momentOf(instant));

const offered = (how: string, { ready, delayed }: Offer) => [
  [
    how,
    momentOf(ready.safe),
    `holds with ${Math.floor(ready.chance * 100 + 1e-9)} %`,
    `usually ${momentOf(ready.typical)}`,
  ],
  ...delayed.map(({ name, wantedBy }) => [`${name}: `, ' late', `(wanted by ${deadlineOf(wantedBy)})`]),
];

const promisedOf: Records = ({ by, kept, offer, sooner }) => [
  [kept ? 'Yes: ' : 'No: ', deadlineOf(by)],
  ...offered('Soonest safe hand-over: ', offer),
  ...(sooner === undefined ? [] : offered('Sooner, at the cost of others: ', sooner)),
];

const rowsOfPromise = lines((line) => line !== '' && !line.includes('Nothing sooner was found'));

const sums = ({ soFar, toCome, atEnd }: Sums) => [soFar, toCome, atEnd];

const accountOf: Records = ({ pieces: [account] }) => [
  ['bought for', account!.purchase, '0.00', account!.purchase],
  ['materials', ...sums(account!.materials)],
  ['share of the shop', ...sums(account!.overhead)],
  ['cost, EUR', ...sums(account!.cost)],
  ['bench hours'],
  ['days in the shop', ...[account!.days.soFar, account!.days.toCome].map(String)],
];

const saleOf: Records = ({ pieces: [account] }) => [
  ['loses below', `${account!.losesBelow} EUR`],
  ['price hoped for', `${account!.priceHopedFor} EUR`],
  ['selling', `-${account!.sellingFee} EUR`],
  ['margin', `${account!.margin} EUR`],
  ['earned a bench hour', `${account!.earnedPerBenchHour} EUR`],
  ['earned a day held', `${account!.earnedPerDayHeld} EUR`],
];

/** A table taken in: its sections, and how the area of each was reckoned. */
const takenIn = ['intake', '--ask-nothing', '--kind', 'table', '--size', '145 x 85 x 75 cm', '--lead', 'no'];

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
  { asked: ['price', 'stool'], records: accountOf, rowsOf: below(/^ +so far +to come/) },
  { asked: ['price', 'stool'], records: saleOf, rowsOf: after(/^ +days in the shop/) },
  { asked: ['air'], records: airOf, rowsOf: lines((line) => airRow.test(line)) },
  { asked: ['promise', 'brushed', '--by', '2027-02-20'], records: promisedOf, rowsOf: rowsOfPromise },
  { asked: ['promise', 'brushed', '--by', '2027-01-13'], records: promisedOf, rowsOf: rowsOfPromise },
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
      .replace('name: Owner', `name: "${owner}"`) +
    'prices: { water-borne-acrylic-enamel: 30 EUR for 1 L }\noverhead-per-day: 2 EUR\nselling-fee: 6 %\n',
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
            // Two tables may stand in one answer.
            const answered = new Map<string, readonly [Documents, string]>();
            for (const { asked, records, rowsOf } of tables) {
              const key = asked.join(' ');
              const [document, text] = answered.get(key) ?? [
                JSON.parse(await piped([...asked, '--json'], { folder })) as Documents,
                await piped(asked, { folder, env }),
              ];
              answered.set(key, [document, text]);
              const expected = records(document, called);
              const rows = rowsOf(text);
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

  it('what is taken in is one line a section, with all that intake --json says of it', () =>
    fc.assert(
      fc.asyncProperty(
        longName,
        fc.constantFrom('brushed', 'painted-brushed'),
        fc.constantFrom(undefined, '40', '80'),
        async (name, finish, columns) => {
          const env: Record<string, string> = columns === undefined ? {} : { COLUMNS: columns };
          const { 'recipes/brushed.yaml': recipe } = shopOf([name, name, name, name], name);
          const files = {
            'shop.yaml': `${shopFile}tools: { sander: { count: 1 }, clamps: { count: 1 } }\n`,
            'recipes/brushed.yaml': recipe.replace('Brushed', `"${name}"`),
          };
          const asked = [...takenIn, '--found', 'gouges', '--finish', finish, '--name', name];
          const told = (how: readonly string[]) =>
            inShop(files, (folder) => piped([...asked, '--id', 'new', ...how], { folder, env }));
          const { sections } = JSON.parse(await told(['--json'])) as Documents;
          const [head, ...rest] = (await told([])).split('\n');
          expect(sections.map((section) => section.name)).toEqual(['Top', 'Base']);
          expect(head).toBe(name);
          sections.forEach((section, i) => {
            const row = rest[i];
            expect(row).toMatch(new RegExp(`^ {2}${section.name} `));
            expect(row).toContain(`${section.areaM2} m² `);
            expect(row).toContain(finish === 'brushed' ? `  ${name} · ` : '  Painted, brushed with a ');
            for (const { part } of section.with ?? []) expect(row).toContain(`with ${part}: `);
            for (const step of section.without) expect(row).toContain(`without ${step}: `);
            expect(row).toContain(' · area: ');
          });
          expect(rest[sections.length]).toMatch(/^(?: +Not planned: |Written: )/);
        },
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
