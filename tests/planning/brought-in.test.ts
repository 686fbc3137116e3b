import fc from 'fast-check';
import { expect, test } from 'vitest';
import { timeConstantMinutes } from '../../src/drying/surface.ts';
import type { Book } from '../../src/model/book.ts';
import { planIn } from '../../src/files/plan-file.ts';
import type { Entry } from '../../src/model/journal.ts';
import type { BroughtIn, Plan } from '../../src/model/plan.ts';
import { planDocument } from '../../src/model/plan-document.ts';
import type { AirSource } from '../../src/model/shop.ts';
import { asMade } from '../../src/planning/as-made.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { whyChain } from '../../src/planning/why.ts';
import { namesOf } from '../../src/reports/names.ts';
import { sayCause } from '../../src/reports/why.ts';
import { look, manner } from '../reports/sample.ts';
import { verify } from '../../src/verify/verify.ts';
import { COAT_1, COAT_2, filmBook, start } from './film-book.ts';

const limits = { minTempC: 8, maxTempC: 35, minRhPercent: 0, maxRhPercent: 90, dewMarginK: 3, source: 'invented' };

/** The first coat's step is sanding in a cold shed; what is painted, is painted at the bench of the warm room. */
function shedBook(shed: AirSource, journal: readonly Entry[] = [], thicknessMm = 19): Book {
  const book = filmBook({ journal });
  const painted = book.recipes.get('painted');
  const paint = book.materials.get('paint');
  const [first, second] = painted?.steps ?? [];
  const [way] = first?.ways ?? [];
  if (!painted || !paint || !first || !second || !way) throw new Error('the small shop has changed');
  const { material, ...sanding } = first;
  expect(material).toBe('paint');
  const sand = { ...sanding, stage: 'sand' as const, mayPause: true, ways: [{ ...way, stations: ['floor' as const] }] };
  return {
    ...book,
    shop: {
      ...book.shop,
      rooms: [
        { id: 'room', name: 'Room', air: { kind: 'constant', tempC: 20, rhPercent: 65 } },
        { id: 'shed', name: 'Shed', air: shed },
      ],
      stations: [...book.shop.stations, { id: 'floor', name: 'Floor', room: 'shed', kind: 'floor', slots: 1 }],
    },
    materials: new Map([['paint', { ...paint, limits }]]),
    recipes: new Map([['painted', { ...painted, steps: [sand, second] }]]),
    pieces: book.pieces.map((p) => ({ ...p, sections: p.sections.map((s) => ({ ...s, thicknessMm })) })),
  };
}

const cold: AirSource = { kind: 'constant', tempC: 5, rhPercent: 60 };

function planned(book: Book, now: number) {
  const situation = situationOf(book, now);
  const made = makePlan(situation, { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  const spanOf = (id: string) => made.plan.steps.find((s) => s.id === id)?.spans[0];
  return { situation, made, sand: spanOf(COAT_1), coat: spanOf(COAT_2) };
}

/** From 5 °C to 16.23 °C in air at 20 °C and 65 %, whose dew point is 13.23 °C (ISO 8502-4; Newton's cooling). */
const waits = (mm: number) => timeConstantMinutes(mm) * Math.log((20 - 5) / (20 - 16.23));

test.each([9, 19, 40])('work %d mm thick from a shed at 5 °C is coated once it is 3 K clear of the dew point', (mm) => {
  const { sand, coat } = planned(shedBook(cold, [], mm), start);
  const waited = (coat?.start ?? 0) - (sand?.end ?? 0);
  expect(Math.abs(waited - waits(mm))).toBeLessThan(3);
});

test('the verifier refuses the same coat a quarter of an hour earlier, and takes it at its time', () => {
  const { situation, made, coat } = planned(shedBook(cold), start);
  const evidence = { situation, air: made.air, factors: made.factors };
  const early = {
    ...made.plan,
    steps: made.plan.steps.map((s) =>
      s.id === COAT_2 && coat ? { ...s, spans: [{ start: coat.start - 15, end: coat.end - 15 }] } : s,
    ),
  };
  expect(verify(evidence, made.plan)).toEqual([]);
  expect(
    verify(evidence, early)
      .filter((b) => b.rule === 'air')
      .map((b) => b.text),
  ).toEqual([expect.stringContaining('the surface at') as string]);
});

test('what was last done in the shed may stand there yet: it is not taken for warm before it can have been carried', () => {
  const done: Entry = {
    number: 1,
    at: start,
    deed: { kind: 'done', task: COAT_1, from: start - 300, to: start - 240 },
  };
  const now = start + 120;
  const { coat } = planned(shedBook(cold, [done]), now);
  expect(Math.abs((coat?.start ?? 0) - now - waits(19))).toBeLessThan(3);
});

test('what the plan of the evening had carried in is warm in the morning: planned again, the coat does not move', () => {
  const evening = start + 13.5 * 60;
  const sanded: Entry = {
    number: 1,
    at: evening,
    deed: { kind: 'done', task: COAT_1, from: evening - 60, to: evening },
  };
  // Nobody is there to paint before the next morning, but to carry.
  const book = shedBook(cold, [sanded]);
  const late = { from: 7 * 60, to: 17 * 60 };
  const days = Object.keys(book.shop.opening.week) as (keyof Book['shop']['opening']['week'])[];
  const week = (span: typeof late) =>
    Object.fromEntries(days.map((d) => [d, [span]])) as unknown as Book['shop']['opening']['week'];
  const shop = {
    ...book.shop,
    hands: book.shop.hands.map((h) => ({ ...h, hours: { week: week(late), days: {} } })),
  };
  const shopBook = { ...book, shop };
  const first = planned(shopBook, evening);
  const morning = start + 22.9 * 60;
  const spanOf = (plan: Plan) => plan.steps.find((s) => s.id === COAT_2);
  expect(spanOf(first.made.plan)).toMatchObject({ broughtIn: { from: 'shed', at: evening } });
  expect(first.coat?.start).toBe(start + 23 * 60);
  let kept = first.made.plan;
  for (const now of [morning, morning + 3, morning + 5]) {
    const again = makePlan(situationOf(shopBook, now), { seed: 1, steps: 200, kept });
    if (again.kind !== 'plan') throw new Error(again.kind);
    expect(spanOf(again.plan)?.spans).toEqual(spanOf(first.made.plan)?.spans);
    expect(spanOf(again.plan)?.broughtIn).toEqual(spanOf(first.made.plan)?.broughtIn);
    expect(planIn(JSON.stringify(planDocument(again.plan))).plan).toEqual(again.plan);
    expect(asMade(shopBook, again.plan)).toBeDefined();
    kept = again.plan;
  }
  // Without that plan nothing is known of it, and it may stand in the shed yet.
  const unknown = planned(shopBook, morning);
  expect(unknown.coat?.start).toBeGreaterThan(start + 23 * 60 + 20);
});

test('carried by the latest minute that the plan names it is warm in time, and a quarter of an hour later it is not', () => {
  const { made, coat } = planned(shedBook(cold), start);
  const { by, at } = made.plan.steps.find((s) => s.id === COAT_2)?.broughtIn ?? { by: 0, at: 0 };
  expect(by).toBeGreaterThanOrEqual(at);
  expect(Math.abs((coat?.start ?? 0) - by - waits(19))).toBeLessThan(3);
});

test.each([
  ['sooner than it can be carried', (b: BroughtIn) => ({ ...b, at: b.at - 1 }), 'cannot be carried before'],
  ['from where it was not', (b: BroughtIn) => ({ ...b, from: 'room' }), 'where it was not'],
  ['after the latest that would do', (b: BroughtIn) => ({ ...b, by: b.at - 1 }), 'does not go together'],
  ['later than its coat', (b: BroughtIn) => ({ ...b, by: b.by + 600 }), 'does not go together'],
  ['in time, but still cold', (b: BroughtIn) => ({ ...b, by: b.by + 15 }), 'would find: the surface at'],
])('the verifier refuses work shown to come in %s', (_, wrong, said) => {
  const { situation, made } = planned(shedBook(cold), start);
  const steps = made.plan.steps.map((s) => (s.broughtIn ? { ...s, broughtIn: wrong(s.broughtIn) } : s));
  expect(steps).not.toEqual(made.plan.steps);
  const found = verify({ situation, air: made.air, factors: made.factors }, { ...made.plan, steps });
  expect(found.map((b) => [b.rule, b.text])).toEqual([['shown', expect.stringContaining(said) as string]]);
});

test('why names the wait of cold work: from where it comes, by when, and when its surface is warm enough', () => {
  const { situation, made, coat } = planned(shedBook(cold), start);
  const brought = made.plan.steps.find((s) => s.id === COAT_2)?.broughtIn;
  const [link, before] = whyChain(situation, made.air, made.plan, COAT_2);
  const { at: carried, by: latest } = brought ?? {};
  expect(link?.cause).toEqual({ kind: 'cold-work', from: 'shed', carried, latest, until: coat?.start });
  expect(before?.step.id).toBe(COAT_1);
  const names = namesOf(situation.book);
  const desk = { plan: made.plan, names, look: look(120), manner: { ...manner, zone: 'UTC' } };
  const warm = new Date((coat?.start ?? 0) * 60_000).toISOString().slice(11, 16);
  expect(link && sayCause(link.cause, link, desk)).toBe(
    `it is brought in from Shed by today 09:00: its surface is warm enough today ${warm}`,
  );
});

test('why names no such wait where the work was warm before its coat could begin', () => {
  const { situation, made } = planned(shedBook({ kind: 'constant', tempC: 20, rhPercent: 65 }), start);
  expect(whyChain(situation, made.air, made.plan, COAT_2)[0]?.cause.kind).toBe('order');
});

test('from a shed as warm as the room it is coated at once', () => {
  const { sand, coat } = planned(shedBook({ kind: 'constant', tempC: 20, rhPercent: 65 }), start);
  expect(coat?.start).toBe(sand?.end);
});

test('in whatever air, a plan is found that the verifier takes', () => {
  const temp = fc.integer({ min: -5, max: 25 });
  fc.assert(
    fc.property(fc.array(temp, { minLength: 3, maxLength: 8 }), fc.constantFrom(6, 19, 50), (temps, mm) => {
      const curve = temps.map((tempC, i) => ({ clock: Math.round((1440 * i) / temps.length), tempC, rhPercent: 70 }));
      const situation = situationOf(shedBook({ kind: 'daily', curve }, [], mm), start);
      expect(makePlan(situation, { seed: 1, steps: 100 }).kind).toBe('plan');
    }),
    { numRuns: 30 },
  );
});
