import fc from './property.ts';
import type { Book } from '../../src/model/book.ts';
import type { Spread } from '../../src/model/mark.ts';
import type { Material, RecoatWindow } from '../../src/model/material.ts';
import type { Piece, Section } from '../../src/model/piece.ts';
import type { Recipe, RecipeStep, RecipeWay } from '../../src/model/recipe.ts';
import type { ClockSpan, Hours, Shop, StationKind } from '../../src/model/shop.ts';
import { minuteAt } from '../../src/time/zone.ts';

// Random shops whose figures stand for no material: they only have to try every kind of rule.

const source = 'invented for the test';
export const zone = 'America/New_York';
/** A Thursday, before a closed weekend. */
export const now = minuteAt('2027-01-14', 7 * 60 + 30, zone);

const spread = (low: number, typical: number, high: number): Spread & { source: string } => ({
  low,
  typical,
  high,
  source,
});

const anyHours = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 12 }))
  .map(([low, plus, more]) => spread(low / 2, (low + plus) / 2, (low + plus + more) / 2));

const anyWindows: fc.Arbitrary<readonly RecoatWindow[]> = fc.oneof<fc.Arbitrary<readonly RecoatWindow[]>[]>(
  fc.constant([]),
  anyHours.map((opens) => [{ opens }]),
  fc.tuple(anyHours, fc.integer({ min: 6, max: 80 })).map(([opens, open]) => {
    const shut = opens.high + open;
    return [
      { opens, shuts: spread(shut, shut + 2, shut + 4) },
      { opens: spread(shut, shut + 2, shut + 4), prep: 'scuff' as const },
    ];
  }),
  fc
    .integer({ min: 24, max: 60 })
    .map((late) => [
      { opens: spread(0, 0.1, 0.2), shuts: spread(1, 1.5, 2) },
      { opens: spread(late, late + 2, late + 6) },
    ]),
);

function anyMaterial(id: string, family: Material['family'], mechanism: Material['mechanism']): fc.Arbitrary<Material> {
  return fc.tuple(anyHours, anyHours, anyWindows, fc.boolean()).map(([touch, later, windows, minded]) => {
    const add = (a: Spread, b: Spread, times: number) =>
      spread(a.low + b.low * times, a.typical + b.typical * times, a.high + b.high * times);
    return {
      id,
      name: id,
      family,
      mechanism,
      reference: { tempC: 23, rhPercent: 50 },
      marks: {
        'dust-free': spread(touch.low / 2, touch.typical / 2, touch.high / 2),
        touch,
        sand: add(touch, later, 1),
        recoat: add(touch, later, 0.5),
        handle: add(touch, later, 1.5),
        stack: add(touch, later, 3),
      },
      windows,
      ...(minded && {
        limits: { minTempC: 12, maxTempC: 32, minRhPercent: 0, maxRhPercent: 82, dewMarginK: 3, source },
      }),
      stack: [],
      cautions: [],
      source,
    };
  });
}

const anyMaterials = fc.tuple(
  anyMaterial('paint', 'alkyd', 'oxidation'),
  anyMaterial('enamel', 'water-borne', 'water'),
  anyMaterial('filler', 'filler', 'two-part'),
  anyMaterial('glue', 'glue', 'pva-glue'),
);

const anyWay = (stations: readonly StationKind[], tools: readonly string[], skill?: string): fc.Arbitrary<RecipeWay> =>
  fc.integer({ min: 1, max: 30 }).map((five) => ({
    name: '',
    time: { fixedMinutes: five * 5, minutesPerM2: 0, minutesPerItem: 0 },
    stations,
    tools,
    ...(skill !== undefined && { skill }),
    thickness: 1,
    transferEfficiency: 1,
  }));

type Kind = 'sand' | 'fill' | 'glue' | 'paint' | 'enamel' | 'look' | 'lift';

function anyStep(kind: Kind, index: number): fc.Arbitrary<RecipeStep> {
  const plain = {
    id: `${kind}-${index}`,
    title: kind,
    supplies: [],
    people: 1,
    dusty: false,
    mayPause: false,
    coats: 1,
    between: [],
    disturbsOldPaint: false,
    source,
  } as const;
  switch (kind) {
    case 'sand':
      return anyWay(['bench', 'floor'], ['sander']).map((w) => ({
        ...plain,
        stage: 'sand',
        ways: [w],
        dusty: true,
        mayPause: true,
      }));
    case 'fill':
      return anyWay(['bench', 'floor'], []).map((w) => ({ ...plain, stage: 'fill', ways: [w], material: 'filler' }));
    case 'glue':
      return anyWay(['bench'], ['clamps']).map((w) => ({ ...plain, stage: 'repair', ways: [w], material: 'glue' }));
    case 'paint':
      return anyWay(['bench', 'floor'], []).map((w) => ({ ...plain, stage: 'coat', ways: [w], material: 'paint' }));
    case 'enamel':
      return fc
        .tuple(
          anyWay(['spray'], ['sprayer'], 'spray'),
          anyWay(['bench'], []),
          fc.boolean(),
          fc.integer({ min: 1, max: 2 }),
        )
        .map(([spray, brush, both, coats]) => ({
          ...plain,
          stage: 'coat' as const,
          ways: both
            ? [
                { ...spray, name: 'spray' },
                { ...brush, name: 'brush', thickness: 1.2 },
              ]
            : [spray],
          material: 'enamel',
          coats,
        }));
    case 'look':
      return anyWay(['bench', 'floor', 'spray'], []).map((w) => ({ ...plain, stage: 'inspect', ways: [w] }));
    case 'lift':
      return anyWay(['floor'], []).map((w) => ({ ...plain, stage: 'refit', ways: [w], people: 2 }));
  }
}

function anyRecipe(id: string, most: number): fc.Arbitrary<Recipe> {
  return fc
    .array(fc.constantFrom<Kind>('sand', 'fill', 'glue', 'paint', 'enamel', 'look', 'lift'), {
      minLength: 2,
      maxLength: most,
    })
    .chain((kinds) => fc.tuple(...kinds.map((kind, i) => anyStep(kind, i))))
    .map((steps) => ({ id, name: id, about: '', steps }));
}

const day = (...spans: readonly (readonly [number, number])[]): ClockSpan[] =>
  spans.map(([from, to]) => ({ from: from * 60, to: to * 60 }));

function week(workday: readonly ClockSpan[], saturday: readonly ClockSpan[]): Hours {
  return {
    week: {
      monday: workday,
      tuesday: workday,
      wednesday: workday,
      thursday: workday,
      friday: workday,
      saturday,
      sunday: [],
    },
    days: {},
  };
}

const anyShop: fc.Arbitrary<Shop> = fc
  .record({
    benches: fc.integer({ min: 1, max: 2 }),
    cold: fc.integer({ min: 8, max: 14 }),
    damp: fc.integer({ min: 60, max: 90 }),
    saturday: fc.boolean(),
    lunch: fc.boolean(),
  })
  .map(({ benches, cold, damp, saturday, lunch }) => {
    const workday = lunch ? day([8, 12], [13, 17]) : day([8, 17]);
    const hours = week(workday, saturday ? day([9, 12]) : []);
    return {
      name: 'Random shop',
      timeZone: zone,
      units: 'metric',
      clock: 24,
      weekStartsOn: 'monday',
      currency: 'EUR',
      opening: hours,
      rooms: [
        { id: 'warm', name: 'Warm room', air: { kind: 'constant', tempC: 20, rhPercent: 50 } },
        {
          id: 'cold',
          name: 'Cold room',
          air: {
            kind: 'daily',
            curve: [
              { clock: 6 * 60, tempC: cold, rhPercent: damp },
              { clock: 15 * 60, tempC: cold + 8, rhPercent: damp - 25 },
            ],
          },
        },
      ],
      stations: [
        { id: 'bench', name: 'Bench', room: 'warm', kind: 'bench', slots: benches },
        { id: 'cold-bench', name: 'Cold bench', room: 'cold', kind: 'bench', slots: 1 },
        { id: 'floor', name: 'Floor', room: 'warm', kind: 'floor', slots: 2 },
        { id: 'spray', name: 'Spray corner', room: 'cold', kind: 'spray', slots: 1 },
      ],
      tools: [
        { id: 'sprayer', name: 'Sprayer', count: 1, setUpMinutes: 10, washUpMinutes: 15 },
        { id: 'sander', name: 'Sander', count: 1, setUpMinutes: 0, washUpMinutes: 0 },
        { id: 'clamps', name: 'Clamps', count: 1, setUpMinutes: 0, washUpMinutes: 0 },
      ],
      hands: [
        { id: 'owner', name: 'Owner', skills: ['spray'], hours },
        { id: 'helper', name: 'Helper', skills: [], hours: week(day([9, 12]), []) },
      ],
      safeChance: 0.9,
    };
  });

function section(id: string, recipe: string, attachedTo?: string): Section {
  return {
    id,
    name: id,
    recipe,
    areaM2: 1,
    items: 1,
    thicknessMm: 19,
    materials: {},
    without: [],
    ...(attachedTo !== undefined && { attachedTo }),
  };
}

function anyPiece(id: string): fc.Arbitrary<Piece> {
  return fc
    .record({
      two: fc.boolean(),
      attached: fc.boolean(),
      price: fc.integer({ min: 0, max: 90_000 }),
      wantedDays: fc.option(fc.integer({ min: 1, max: 20 })),
      arrivesHours: fc.option(fc.integer({ min: 1, max: 60 })),
    })
    .map(({ two, attached, price, wantedDays, arrivesHours }) => ({
      id,
      name: id,
      kind: 'box',
      priceMinor: price,
      costMinor: Math.floor(price / 3),
      mayCarryLead: false,
      sections: two
        ? [section('body', 'one'), section('legs', 'two', attached ? 'body' : undefined)]
        : [section('body', 'one')],
      joins: [],
      ...(wantedDays !== null && { wantedBy: now + wantedDays * 1440 }),
      ...(arrivesHours !== null && { arrives: now + arrivesHours * 60 }),
    }));
}

/** A random shop with up to `pieces` pieces of one or two sections with up to `steps` steps each. */
export function anyBook(pieces: number, steps: number): fc.Arbitrary<Book> {
  return fc
    .tuple(
      anyShop,
      anyMaterials,
      anyRecipe('one', steps),
      anyRecipe('two', steps),
      fc
        .integer({ min: 1, max: pieces })
        .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyPiece(`piece-${i + 1}`)))),
    )
    .map(([shop, materials, one, two, allPieces]) => ({
      shop,
      materials: new Map(materials.map((m) => [m.id, m])),
      recipes: new Map([one, two].map((r) => [r.id, r])),
      pieces: allPieces,
      journal: [],
    }));
}
