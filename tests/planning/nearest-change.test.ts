import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import type { Piece } from '../../src/model/piece.ts';
import type { Hours, Shop } from '../../src/model/shop.ts';
import { changed } from '../../src/planning/change.ts';
import { horizonOf } from '../../src/planning/horizon.ts';
import { airFor } from '../../src/planning/air-for.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { type Nearest, nearestChange } from '../../src/planning/nearest-change.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { whyChain } from '../../src/planning/why.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Minute } from '../../src/time/span.ts';
import { verify } from '../../src/verify/verify.ts';
import { minuteAt } from '../../src/time/zone.ts';
import * as part from '../support/book-parts.ts';
import { anyBook, now as randomNow } from '../support/random-shop.ts';
import { demoBook, demoNow, demoPlan } from './demo.ts';

const DAY = 24 * 60;
const long = process.env['DRYBENCH_LONG'] === '1';

/** What the verifier says of the plan in that shop, everything worked out from its files alone. */
function breachesIn(book: Book, now: Minute, plan: Plan) {
  const situation = situationOf(book, now);
  return verify({ situation, air: airFor(situation, horizonOf(situation)), factors: new Map() }, plan);
}

function startIn(plan: Plan, id: string): Minute {
  return plan.steps.find((s) => s.id === id)!.spans[0]!.start;
}

/** What is told of every `every`-th step of the plan of a shop, each held against the shop with the change made to it. */
function tellAndCheck(book: Book, now: Minute, every: number, tally: Map<string, number>): void {
  const situation = situationOf(book, now);
  const made = makePlan(situation, { seed: 1, steps: 300 });
  if (made.kind !== 'plan') return;
  const { plan, air, factors } = made;
  plan.steps.forEach((step, i) => {
    if (i % every !== every - 1) return;
    const chain = whyChain(situation, air, plan, step.id);
    const nearest = nearestChange({ standing: { plan, air, factors }, made: situation, now }, chain);
    const kind = nearest.kind === 'change' ? nearest.changes[0]!.kind : nearest.kind;
    tally.set(kind, (tally.get(kind) ?? 0) + 1);
    if (nearest.kind !== 'none') check(book, now, plan, step.id, nearest);
  });
}

function check(book: Book, now: Minute, plan: Plan, id: string, nearest: Exclude<Nearest, { kind: 'none' }>): void {
  const changes = nearest.kind === 'change' ? nearest.changes : [];
  const breaches = breachesIn(changes.reduce(changed, book), now, nearest.plan);
  // Nobody is shown what that plan shows of films and of carrying; what is done, and when, keeps every rule.
  expect(breaches.filter(({ rule }) => rule !== 'shown')).toEqual([]);
  expect(startIn(nearest.plan, id)).toBe(nearest.start);
  expect(nearest.start).toBeLessThanOrEqual(startIn(plan, id) - 15);
  // All else stays, and what comes along comes sooner.
  const along = nearest.kind === 'change' ? nearest.along : undefined;
  for (const other of plan.steps) {
    const start = startIn(nearest.plan, other.id);
    expect(start).toBeLessThanOrEqual(startIn(plan, other.id));
    if (along !== undefined && other.id !== id && !along.includes(other.id))
      expect(start).toBe(startIn(plan, other.id));
  }
  // What is done as it was planned is the planned step itself, which the verifier need not look at again.
  const done = ({ way, hands, station, spans, holdsStationUntil }: PlannedStep) =>
    JSON.stringify([way, hands, station, spans, holdsStationUntil]);
  for (const other of plan.steps) {
    const then = nearest.plan.steps.find((s) => s.id === other.id)!;
    if (done(then) === done(other) && then.broughtIn === other.broughtIn) expect(then).toBe(other);
  }
  // Without the change that plan would not hold: it is the change that helps.
  if (changes.length > 0) expect(breachesIn(book, now, nearest.plan)).not.toEqual([]);
}

describe('the nearest change that lets a step begin sooner', () => {
  test('in the demo shop: made to the shop, the step does begin sooner, and all the rest stands', () => {
    const tally = new Map<string, number>();
    tellAndCheck(demoBook(), demoNow, long ? 2 : 23, tally);
    const { none = 0, ...told } = Object.fromEntries(tally) as Record<string, number>;
    expect(none).toBeLessThan(Object.values(told).reduce((sum, count) => sum + count, 0));
    expect(Object.keys(told)).toEqual(expect.arrayContaining(['in']));
  });

  test('is told also where only what that plan would show of carrying is not so', () => {
    const { situation, plan, air, factors } = demoPlan(20);
    const chain = whyChain(situation, air, plan, 'china-cabinet/carcass/scuff-1');
    const nearest = nearestChange({ standing: { plan, air, factors }, made: situation, now: demoNow }, chain);
    expect(nearest).toMatchObject({ kind: 'change', changes: [{ kind: 'in', hand: 'owner', date: '2027-01-17' }] });
  });

  test('a piece that is away, or a room that cannot be had: back sooner, or had for longer', () => {
    const hours = part.weekOf(part.clock([8, 17]));
    const steps = ['rub', 'scrape', 'patch', 'polish', 'fit'].map((id) =>
      part.stepOf(id, 'repair', [part.wayOf(4 * 60)], { mayPause: true }),
    );
    const chest = part.pieceOf('chest', [part.sectionOf('body', 'work')]);
    const bookOf = (shop: Shop, piece: Piece) => part.bookOf(shop, [], [part.recipeOf('work', steps)], [piece]);
    const shop = part.shopOf(hours);
    const monday = minuteAt('2027-01-11', 8 * 60, 'UTC');
    const away = { at: 'Turner', start: monday + DAY, end: monday + 9 * DAY };
    const never = part.weekOf([]).week;
    const wholeDay = [{ from: 0, to: DAY }];
    const open: Hours = {
      week: never,
      days: { '2027-01-11': wholeDay, '2027-01-15': wholeDay, '2027-01-16': wholeDay, '2027-01-17': wholeDay },
    };
    const hired = { ...shop, rooms: shop.rooms.map((room) => ({ ...room, open })) };
    const tally = new Map<string, number>();
    tellAndCheck(bookOf(shop, { ...chest, away: [away] }), monday, 1, tally);
    tellAndCheck(bookOf(hired, chest), monday, 1, tally);
    expect(tally.get('back') ?? 0).toBeGreaterThan(0);
    expect(tally.get('room') ?? 0).toBeGreaterThan(0);
  });

  test('in random shops', () => {
    const tally = new Map<string, number>();
    fc.assert(
      fc.property(anyBook(3, 4), (book) => {
        tellAndCheck(book, randomNow, 4, tally);
      }),
      { seed: 20270119, numRuns: long ? 200 : 5 },
    );
    // Neither kind may die out unnoticed.
    for (const kind of ['none', 'in', ...(long ? ['warmer', 'slot', 'tool', 'helper', 'as-it-is'] : [])])
      expect(tally.get(kind) ?? 0).toBeGreaterThan(0);
    if (long) console.log(Object.fromEntries(tally));
  });
});
