import fc from '../support/property.ts';
import type { Book } from '../../src/model/book.ts';
import type { Material, RecoatWindow } from '../../src/model/material.ts';
import type { Piece } from '../../src/model/piece.ts';
import type { RecipeStep } from '../../src/model/recipe.ts';
import type { Shop } from '../../src/model/shop.ts';
import { minuteAt } from '../../src/time/zone.ts';
import * as part from '../support/book-parts.ts';

// Shops of a few steps, which enumeration can plan. In `whole hours`, the air is that of the sheets and all that has a length
// is a whole number of hours, so that some cheapest plan begins every step on the hour: each step of it is held where it
// is by an hour that something else opens, ends or dries at.

/** A Monday morning. */
export const now = minuteAt('2027-01-11', 8 * 60, 'UTC');
/** An area on which scuffing takes an hour. */
const SCUFFED_IN_AN_HOUR_M2 = 6.875;

const span = (low: number, more: number, most: number) => part.sheetHours(low, low + more, low + more + most);

const anyHours = (most: number) =>
  fc.tuple(fc.integer({ min: 0, max: most }), fc.nat(1), fc.nat(1)).map(([a, b, c]) => span(a, b, c));

const windows = fc.oneof<fc.Arbitrary<readonly RecoatWindow[]>[]>(
  fc.constant([]),
  anyHours(6).map((opens) => [{ opens }]),
  fc.tuple(anyHours(3), fc.nat(4)).map(([opens, open]) => [{ opens, shuts: span(opens.high + open, 1, 1) }]),
  fc.tuple(anyHours(3), fc.nat(4), fc.integer({ min: 1, max: 8 })).map(([opens, open, gap]) => {
    const shuts = span(opens.high + open, 1, 1);
    return [{ opens, shuts }, { opens: span(shuts.low + gap, 0, 1) }];
  }),
  fc.tuple(anyHours(3), fc.nat(6)).map(([opens, open]) => {
    const shuts = span(opens.high + open, 1, 1);
    return [
      { opens, shuts },
      { opens: span(shuts.low, 0, 1), prep: 'scuff' as const },
    ];
  }),
);

function anyMaterial(id: string, family: Material['family']): fc.Arbitrary<Material> {
  return fc
    .record({
      dustFree: anyHours(3),
      touch: anyHours(4),
      later: anyHours(10),
      stacks: fc.boolean(),
      cures: anyHours(20),
      windows: family === 'alkyd' ? windows : fc.constant([]),
    })
    .map(({ dustFree, touch, later, stacks, cures, windows: own }) =>
      part.materialOf(id, {
        family,
        marks: {
          'dust-free': dustFree,
          touch,
          handle: later,
          ...(stacks && { stack: part.sheetHours(later.low + 2, later.typical + 2, later.high + 2) }),
          cure: part.sheetHours(later.low + cures.low, later.typical + cures.typical, later.high + cures.high),
        },
        windows: own,
      }),
    );
}

type Kind = 'sand' | 'glue' | 'paint' | 'enamel' | 'look' | 'lift';
const kinds: readonly Kind[] = ['sand', 'glue', 'paint', 'paint', 'paint', 'enamel', 'look', 'look', 'lift'];

function stepOfKind(kind: Kind, id: string, hours: number, byBrush: boolean): RecipeStep {
  const way = part.wayOf(hours * 60);
  switch (kind) {
    case 'sand':
      return part.stepOf(id, 'sand', [{ ...way, stations: ['bench', 'floor'], tools: ['sander'] }], {
        dusty: true,
        mayPause: true,
      });
    case 'glue':
      return part.stepOf(id, 'repair', [{ ...way, tools: ['clamps'] }], { material: 'glue' });
    case 'paint':
      return part.stepOf(id, 'coat', [{ ...way, stations: ['bench', 'floor'] }], { material: 'paint' });
    case 'enamel': {
      const spray = { ...way, name: 'spray', stations: ['spray' as const], tools: ['sprayer'], skill: 'spray' };
      const brush = part.wayOf(hours * 60 + 60, { name: 'brush' });
      return part.stepOf(id, 'coat', byBrush ? [spray, brush] : [spray], { material: 'paint' });
    }
    case 'look':
      return part.stepOf(id, 'inspect', [{ ...way, stations: ['bench', 'floor', 'spray'] }]);
    case 'lift':
      return part.stepOf(id, 'refit', [{ ...way, stations: ['floor'] }], { people: 2 });
  }
}

const anySteps = (most: number) =>
  fc
    .array(fc.tuple(fc.constantFrom(...kinds), fc.integer({ min: 1, max: 3 }), fc.boolean()), {
      minLength: 1,
      maxLength: most,
    })
    .map((list) => list.map(([kind, hours, byBrush], i) => stepOfKind(kind, `${kind}-${i + 1}`, hours, byBrush)));

const openings = [part.clock([8, 12]), part.clock([8, 11], [12, 14]), part.clock([9, 13])] as const;

const anyShop: fc.Arbitrary<Shop> = fc
  .record({
    opening: fc.constantFrom(...openings),
    closed: fc.boolean(),
    helper: fc.constantFrom('none', 'always', 'mornings'),
    slots: fc.integer({ min: 1, max: 2 }),
    stations: fc.constantFrom('one', 'two', 'apart'),
  })
  .map(({ opening, closed, helper, slots, stations }) => {
    const hours = { ...part.weekOf(opening), days: closed ? { '2027-01-12': [] } : {} };
    return part.shopOf(hours, {
      rooms: [part.roomOf('room', 'Room'), part.roomOf('shed', 'Shed')],
      stations: [
        part.stationOf('bench', 'Bench', 'room', 'bench', slots),
        ...(stations === 'two' ? [part.stationOf('bench-2', 'Bench 2', 'room', 'bench')] : []),
        part.stationOf('floor', 'Floor', stations === 'apart' ? 'shed' : 'room', 'floor'),
        part.stationOf('spray', 'Spray corner', stations === 'one' ? 'room' : 'shed', 'spray'),
      ],
      tools: [part.toolOf('sander', 'Sander'), part.toolOf('clamps', 'Clamps'), part.toolOf('sprayer', 'Sprayer')],
      hands: [
        part.handOf('owner', 'Owner', ['spray'], hours),
        ...(helper === 'none'
          ? []
          : [part.handOf('helper', 'Helper', [], helper === 'always' ? hours : part.weekOf(part.clock([8, 10])))]),
      ],
    });
  });

function anyPiece(id: string): fc.Arbitrary<Piece> {
  return fc
    .record({
      recipe: fc.constantFrom('one', 'two'),
      price: fc.nat(40),
      wantedHours: fc.option(fc.integer({ min: 1, max: 60 })),
      arrivesHours: fc.option(fc.integer({ min: 1, max: 26 }), { freq: 3 }),
    })
    .map(({ recipe, price, wantedHours, arrivesHours }) =>
      part.pieceOf(id, [part.sectionOf('body', recipe, { areaM2: SCUFFED_IN_AN_HOUR_M2 })], {
        priceMinor: price * 2500,
        costMinor: Math.floor(price / 3) * 2500,
        ...(wantedHours !== null && { wantedBy: now + wantedHours * 60 }),
        ...(arrivesHours !== null && { arrives: now + arrivesHours * 60 }),
      }),
    );
}

/** A shop of one to three pieces of one to three steps, all in whole hours. */
export const wholeHours: fc.Arbitrary<Book> = fc
  .constantFrom([1, 3], [2, 2], [2, 3], [3, 1], [3, 2])
  .chain(([pieces = 1, steps = 1]) =>
    fc.tuple(
      anyShop,
      anyMaterial('paint', 'alkyd'),
      anyMaterial('glue', 'glue'),
      anySteps(steps),
      anySteps(steps),
      fc.tuple(...Array.from({ length: pieces }, (_, i) => anyPiece(`piece-${i + 1}`))),
    ),
  )
  .map(([shop, paint, glue, one, two, pieces]) =>
    part.bookOf(shop, [paint, glue], [part.recipeOf('one', one), part.recipeOf('two', two)], pieces),
  );

/** An area from which a coat past its window is stripped in an hour. */
const STRIPPED_IN_AN_HOUR_M2 = 0.5;
/** Mixed for 20 min, set up for and washed up 20 min each: coats laid in one go share these. */
const SHARED_MINUTES = 20;

function sharedCoat(id: string, minutes: number, sprayed: boolean, both: boolean): RecipeStep {
  const time = { fixedMinutes: minutes, minutesPerM2: 0, minutesPerItem: 0, mixMinutes: SHARED_MINUTES };
  const spray = part.wayOf(minutes, { name: 'spray', time, stations: ['spray'], tools: ['sprayer'] });
  const brush = part.wayOf(minutes, { name: 'brush', time, stations: ['bench'] });
  return part.stepOf(id, 'coat', both ? [spray, brush] : [sprayed ? spray : brush], { material: 'paint' });
}

const anySharedPaint: fc.Arbitrary<Material> = fc
  .record({
    dustFree: anyHours(1),
    later: anyHours(4),
    opens: anyHours(3),
    open: fc.option(fc.integer({ min: 1, max: 4 })),
    potLife: fc.option(fc.integer({ min: 1, max: 3 }), { freq: 2 }),
  })
  .map(({ dustFree, later, opens, open, potLife }) =>
    part.materialOf('paint', {
      marks: { 'dust-free': dustFree, handle: later },
      windows: [{ opens, ...(open !== null && { shuts: span(opens.high + open, 0, 0) }) }],
      ...(potLife !== null && { potLife: span(potLife, 0, 0) }),
    }),
  );

/**
 * A shop of two or three coats and perhaps a look at one, work in thirds of an hour and waits in whole ones: some cheapest plan begins
 * every step on a third of an hour, which is also the longest wait between two coats of a session.
 */
export const sharing: fc.Arbitrary<Book> = fc
  .record({
    paint: anySharedPaint,
    opening: fc.constantFrom(part.clock([8, 12]), part.clock([8, 10], [11, 14])),
    helper: fc.boolean(),
    slots: fc.integer({ min: 1, max: 2 }),
    coats: fc.array(fc.tuple(fc.integer({ min: 1, max: 2 }), fc.boolean(), fc.boolean()), {
      minLength: 2,
      maxLength: 2,
    }),
    ends: fc.constantFrom('look', 'coat', 'none', 'none'),
    pieces: fc.array(
      fc.record({
        price: fc.nat(40),
        wanted: fc.option(fc.integer({ min: 1, max: 60 })),
        arrives: fc.option(fc.integer({ min: 1, max: 24 }), { freq: 2 }),
      }),
      { minLength: 2, maxLength: 3 },
    ),
  })
  .map(({ paint, opening, helper, slots, coats, ends, pieces }) => {
    const hours = part.weekOf(opening);
    const recipes = coats.map(([minutes, sprayed, both], i) =>
      part.recipeOf(`recipe-${i}`, [
        sharedCoat('coat', minutes * 20, sprayed, both && pieces.length === 2),
        ...(i > 0 || ends === 'none' || pieces.length > 2
          ? []
          : [
              ends === 'coat'
                ? sharedCoat('second', 20, sprayed, false)
                : part.stepOf('look', 'inspect', [part.wayOf(20)]),
            ]),
      ]),
    );
    const shop = part.shopOf(hours, {
      stations: [
        part.stationOf('bench', 'Bench', 'room', 'bench', slots),
        part.stationOf('spray', 'Spray corner', 'room', 'spray', 2),
      ],
      tools: [part.toolOf('sprayer', 'Sprayer', SHARED_MINUTES, SHARED_MINUTES)],
      hands: [
        part.handOf('owner', 'Owner', [], hours),
        ...(helper ? [part.handOf('helper', 'Helper', [], part.weekOf(part.clock([8, 10])))] : []),
      ],
    });
    return part.bookOf(
      shop,
      [paint],
      recipes,
      pieces.map(({ price, wanted, arrives }, i) =>
        part.pieceOf(
          `piece-${i + 1}`,
          [part.sectionOf('body', `recipe-${i % 2}`, { areaM2: STRIPPED_IN_AN_HOUR_M2 })],
          {
            priceMinor: price * 2500,
            costMinor: Math.floor(price / 3) * 2500,
            ...(wanted !== null && { wantedBy: now + wanted * 20 }),
            ...(arrives !== null && { arrives: now + arrives * 20 }),
          },
        ),
      ),
    );
  });
