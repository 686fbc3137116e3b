// Whatever is answered: the file passes `check` as it is written, and reads back as what was answered.
import fc from '../support/property.ts';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { inEmptyShop, shopText } from './shop.ts';

const at = '2027-01-11T07:30';
const finishes = [
  'painted-brushed',
  'painted-sprayed',
  'milk-paint-wax',
  'clear-water-borne',
  'hardwax-oil',
  'oil-polyurethane',
  'shellac-lacquer',
  'stained-oil-topcoat',
];
const shapes = {
  chest: [['body'], ['drawers', 'fittings']],
  table: [
    ['top', 'base'],
    ['drawers', 'fittings'],
  ],
  chair: [['chairs'], ['alike']],
  cabinet: [
    ['carcass', 'doors'],
    ['doors', 'drawers', 'fittings'],
  ],
  bed: [['ends', 'rails'], []],
  other: [['piece'], []],
} as const;

// Names as people type them, and as they do not: letters of any script, quotes, colons, signs of YAML.
const names = fc
  .oneof(
    fc.constantFrom(
      'Pine washstand',
      'Étagère: "petite" # 2',
      '- [x]',
      'yes',
      '12',
      "o'clock & {more}",
      '漆 の 箱',
      '~',
    ),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 60 }),
  )
  .filter((n) => n.trim() !== '' && n.trim().length <= 120 && !n.startsWith('-'));

const answers = fc.record({
  units: fc.constantFrom('metric' as const, 'us' as const),
  name: names,
  kind: fc.constantFrom(...(Object.keys(shapes) as (keyof typeof shapes)[])),
  size: fc.tuple(...Array.from({ length: 3 }, () => fc.integer({ min: 30, max: 180 }))),
  count: fc.integer({ min: 1, max: 4 }),
  finishes: fc.tuple(fc.constantFrom(...finishes), fc.constantFrom(...finishes)),
  wood: fc.constantFrom('pine', 'oak', 'ash', 'beech', 'unknown'),
  oldFinish: fc.constantFrom('bare', 'clear', 'paint', 'wax-or-oil', 'unknown'),
  lead: fc.constantFrom('no', 'yes', 'tested-none', 'tested-found'),
  found: fc.subarray(['joints-loose', 'veneer-loose', 'runner-missing', 'gouges', 'odour']),
  darkToLight: fc.boolean(),
  day: fc.option(fc.integer({ min: 1, max: 28 }), { nil: undefined }),
  cost: fc.option(fc.integer({ min: 0, max: 99_999 }), { nil: undefined }),
  area: fc.option(fc.integer({ min: 20, max: 400 }), { nil: undefined }),
});
type Answered = typeof answers extends fc.Arbitrary<infer T> ? T : never;

const two = (n: number) => String(n).padStart(2, '0');

function optionsOf(a: Answered, currency: string): string[] {
  const [sections, counted] = shapes[a.kind];
  const unit = a.units === 'us' ? 'in' : 'cm';
  const size = a.units === 'us' ? a.size.map((cm) => Math.round(cm / 2.54)) : a.size;
  const areaUnit = a.units === 'us' ? 'sq ft' : 'm2';
  const finish = sections.map((s, i) => `${s}=${a.finishes[i] ?? a.finishes[0]}`).join(', ');
  const first = sections[0];
  return [
    ...['--name', a.name, '--id', 'thing', '--kind', a.kind],
    ...(a.kind === 'other' ? [] : ['--size', `${size.join(' x ')} ${unit}`]),
    ...counted.flatMap((what) => [`--${what}`, String(a.count)]),
    ...(a.area === undefined && a.kind !== 'other' ? [] : ['--area', `${first}=${(a.area ?? 100) / 100} ${areaUnit}`]),
    ...['--wood', a.wood, '--old-finish', a.oldFinish, '--lead', a.lead],
    ...(a.found.length === 0 ? [] : ['--found', a.found.join(',')]),
    ...['--finish', finish, '--dark-to-light', a.darkToLight ? 'yes' : 'no', '--arrives', '2027-01-12'],
    ...(a.day === undefined ? [] : ['--by', `2027-06-${two(a.day)}`]),
    ...(a.cost === undefined ? [] : ['--cost', `${Math.floor(a.cost / 100)}.${two(a.cost % 100)} ${currency}`]),
  ];
}

interface Written {
  readonly sections: readonly { readonly id: string; readonly with?: readonly { readonly part: string }[] }[];
  readonly notPlanned: readonly string[];
}

const partOf: Readonly<Record<string, string>> = {
  'joints-loose': 'reglue-joints',
  'veneer-loose': 'patch-veneer',
  'runner-missing': 'replace-runners',
  gouges: 'fill-gouges',
  odour: 'seal-odour',
};

it('random answers become a file that check is content with, and that says what was answered', async () => {
  for (const [units, currency] of [
    ['metric', 'EUR'],
    ['us', 'USD'],
  ] as const)
    await inEmptyShop(shopText(units, currency), (folder) =>
      fc.assert(
        fc.asyncProperty(
          answers.map((a) => ({ ...a, units })),
          async (a) => {
            rmSync(join(folder, 'pieces/thing.yaml'), { force: true });
            const words = ['intake', '--shop', folder, '--at', at, '--json', ...optionsOf(a, currency)];
            const { code, out, err } = await drybench(words);
            expect([code, err]).toEqual([0, '']);
            const written = JSON.parse(out) as Written;

            const { book, findings } = readBook(folder, { shippedDir: shippedDir() });
            expect(findings).toEqual([]);
            const piece = book!.pieces[0]!;
            expect(piece).toMatchObject({
              id: 'thing',
              name: a.name.trim(),
              kind: a.kind,
              arrives: Date.UTC(2027, 0, 12) / 60_000,
              costMinor: a.cost ?? 0,
              priceMinor: 0,
              mayCarryLead: a.oldFinish !== 'bare' && a.lead !== 'no',
            });
            // Summer time in Dublin: a date alone is its last minute, 22:59 UTC.
            const lastMinute = a.day === undefined ? undefined : Date.UTC(2027, 5, a.day, 22, 59) / 60_000;
            expect(piece.wantedBy).toBe(lastMinute);
            const tested = piece.mayCarryLead && a.lead.startsWith('tested');
            expect(piece.leadTest).toEqual(
              tested ? { minute: Date.UTC(2027, 0, 11) / 60_000, found: a.lead === 'tested-found' } : undefined,
            );

            const [sections] = shapes[a.kind];
            sections.forEach((id, i) => {
              expect(piece.sections.find((s) => s.id === id)?.recipe).toBe(a.finishes[i] ?? a.finishes[0]);
            });
            if (a.area !== undefined || a.kind === 'other') {
              const area = ((a.area ?? 100) / 100) * (units === 'us' ? 0.09290304 : 1);
              const rounding = units === 'us' ? 0.05 * 0.09290304 : 0.005;
              expect(Math.abs(piece.sections[0]!.areaM2 - area)).toBeLessThanOrEqual(rounding + 1e-9);
            }
            expect(piece.sections.map((s) => s.id)).toEqual(written.sections.map((s) => s.id));
            const parts = piece.sections.flatMap((s) => (s.with ?? []).map((p) => p.part));
            for (const fault of a.found) {
              const told = written.notPlanned.some((t) => t.includes(partOf[fault]!) || t.includes('no section'));
              expect(parts.includes(partOf[fault]!) || told).toBe(true);
            }
          },
        ),
        { numRuns: 10 },
      ),
    );
});

it('what was written can be planned', async () => {
  await inEmptyShop(shopText('metric', 'EUR'), async (folder) => {
    const common = [
      'intake',
      '--shop',
      folder,
      '--at',
      at,
      '--wood',
      'oak',
      '--old-finish',
      'bare',
      '--size',
      '90 x 45 x 80',
    ];
    const more = ['--drawers', '2', '--fittings', '4', '--found', 'gouges,odour', '--finish', 'painted-brushed'];
    expect(await drybench([...common, '--name', 'Oak chest', '--kind', 'chest', ...more])).toMatchObject({ code: 0 });
    const table = ['--name', 'Oak table', '--kind', 'table', '--finish', 'hardwax-oil, base=clear-water-borne'];
    expect(await drybench([...common, ...table, '--by', '2027-03-01'])).toMatchObject({ code: 0 });
    const { code, out } = await drybench(['week', '--shop', folder, '--at', at, '--json']);
    expect(code).toBe(0);
    const plan = JSON.parse(out) as { steps: { id: string }[]; proof: { verified: boolean } };
    expect(plan.proof.verified).toBe(true);
    const ids = plan.steps.map((s) => s.id);
    for (const id of [
      'oak-chest/body/fill-gouges-putty',
      'oak-chest/drawer-boxes/seal-odour-seal',
      'oak-table/top/oil-2',
    ])
      expect(ids).toContain(id);
  });
});
