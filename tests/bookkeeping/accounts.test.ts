import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { accountsOf } from '../../src/bookkeeping/accounts.ts';
import { earnedByKind } from '../../src/bookkeeping/by-kind.ts';
import { heldCosts } from '../../src/bookkeeping/presence.ts';
import { workedMinutes } from '../../src/bookkeeping/work-time.ts';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import type { Deed } from '../../src/model/journal.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { localDay, minuteAt } from '../../src/time/zone.ts';
import { inShop, pieceFile, shopFile } from '../commands/small-shop.ts';

const zone = 'Europe/Dublin';
const at = (date: string, clock: string) => {
  const [hours = '0', minutes = '0'] = clock.split(':');
  return minuteAt(date, Number(hours) * 60 + Number(minutes), zone);
};

const prices = `prices:
  water-borne-acrylic-enamel: [18 EUR for 0.5 L, 30 EUR for 1 L]
  abrasive-180: 10 EUR for 10
  tack-cloth: 1.50 EUR for 1
  gloves: 9 EUR for 50
  rags: 5 EUR for 25
`;
const shop = `${shopFile.replace('skills: []', 'skills: []\n    pay: 12 EUR')}overhead-per-day: 9.01 EUR\nselling-fee: 8 %\n${prices}`;

/** The accounts of the small shop after `deeds`, at `now`. */
function accounts(changes: Readonly<Record<string, string>>, deeds: readonly Deed[], now: number) {
  return inShop(changes, (folder) => {
    const { book, findings } = readBook(folder, { shippedDir: shippedDir(), supplies: true });
    if (book === undefined) throw new Error(JSON.stringify(findings));
    const journal = deeds.map((deed, i) => ({ number: i + 1, at: now, deed }));
    const situation = situationOf({ ...book, journal }, now);
    const made = makePlan(situation, { seed: 1 });
    if (made.kind !== 'plan') throw new Error('no plan');
    return Promise.resolve({ all: accountsOf(book, situation, made.plan), plan: made.plan });
  });
}

const done = (step: string, from: string, to: string, also: object = {}): Deed => ({
  kind: 'done',
  task: `stool/seat/${step}`,
  from: at('2027-01-11', from),
  to: at('2027-01-11', to),
  hands: ['owner'],
  ...also,
});

describe('a stool bought for 10.00, hoped to bring 90.00, after its first morning', () => {
  const deeds = [
    done('scuff', '08:00', '08:45'),
    done('wipe', '08:45', '08:55'),
    done('paint-1', '09:00', '09:35', { used: 0.08 }),
  ];
  const piece = pieceFile('Milking stool').replace('kind:', 'arrives: 2027-01-10\nkind:');

  test('by hand', async () => {
    const { all, plan } = await accounts(
      { 'shop.yaml': shop, 'pieces/stool.yaml': piece },
      deeds,
      at('2027-01-11', '12:00'),
    );
    const [stool] = all;
    // 0.85 of a sheet 0.85, 1.4 rags 0.28, 0.2 of a cloth 0.30, a pair of gloves 0.18, and 80 mL really used 2.88.
    expect(stool?.materials.soFar).toBe(85 + 28 + 30 + 18 + 288);
    // To come: 0.4 / 10 / 0.9 L of enamel for 1.60, another pair of gloves.
    expect(stool?.materials.toCome).toBe(160 + 18);
    // 45, 10 and 35 minutes of 30, 10 and 40 that were planned, at 12.00 an hour.
    expect(stool?.minutes.soFar).toBe(90);
    expect(stool?.plannedMinutes).toBe(80);
    expect(stool?.pay.soFar).toBe(1800);
    // Sunday and Monday.
    expect(stool?.days.soFar).toBe(2);
    expect(stool?.overhead.soFar).toBe(1802);
    expect(stool?.cost.soFar).toBe(1000 + 449 + 1800 + 1802);

    const leaves = plan.pieces[0]?.ready.handedOver?.typical ?? NaN;
    const nights = Math.round((localDay(leaves, zone).start - at('2027-01-10', '00:00')) / 1440);
    expect((stool?.days.soFar ?? 0) + (stool?.days.toCome ?? 0)).toBe(nights + 1);
    const cost = 1000 + 449 + 178 + 1800 + (stool?.pay.toCome ?? 0) + 901 * (nights + 1);
    expect((stool?.cost.soFar ?? 0) + (stool?.cost.toCome ?? 0)).toBe(cost);
    expect(stool?.sale).toMatchObject({ price: 9000, fee: 720, margin: 9000 - 720 - cost });
    expect(stool?.unpriced).toEqual([]);
  });

  test('the work that is left is what the plan has for it', async () => {
    const { all, plan } = await accounts(
      { 'shop.yaml': shop, 'pieces/stool.yaml': piece },
      deeds,
      at('2027-01-11', '12:00'),
    );
    const left = plan.steps.filter((s) => s.done !== true).flatMap((s) => s.spans);
    expect(all[0]?.minutes.toCome).toBe(left.reduce((sum, s) => sum + s.end - s.start, 0));
    expect(left.length).toBeGreaterThan(0);
  });

  test('what has no price is named; steps behind a lead gate are said and not counted', async () => {
    const leaded = `${piece}may-carry-lead: yes\n`;
    const recipe = `name: Sanded\nabout: Invented.\nsource: common practice, no source\nsteps:\n  - { step: scuff, do: Sand, stage: sand, time: 30 min, grit: 180, disturbs-old-paint: yes }\n`;
    const files = { 'shop.yaml': shopFile, 'pieces/stool.yaml': leaded, 'recipes/brushed.yaml': recipe };
    const { all } = await accounts(files, [], at('2027-01-11', '07:30'));
    expect(all[0]).toMatchObject({ heldSteps: 1, minutes: { soFar: 0, toCome: 0 }, unpriced: [] });
    const open = await accounts(
      files,
      [{ kind: 'lead-test', piece: 'stool', found: false }],
      at('2027-01-11', '07:30'),
    );
    expect(open.all[0]).toMatchObject({ heldSteps: 0, minutes: { soFar: 0, toCome: 30 }, unpriced: ['abrasive-180'] });
  });
});

test('kinds of piece: what they earn together for all their hours, the best first', async () => {
  const priced = (name: string, kind: string, price: number) =>
    pieceFile(name).replace('kind: stool', `kind: ${kind}`).replace('90 EUR', `${price} EUR`);
  const files = {
    'pieces/stool.yaml': priced('One', 'stool', 90),
    'pieces/two.yaml': priced('Two', 'stool', 70),
    'pieces/tray.yaml': priced('Tray', 'tray', 300),
    'pieces/gift.yaml': pieceFile('Gift').replace('price: 90 EUR\n', ''),
  };
  const { all } = await accounts(files, [], at('2027-01-11', '07:30'));
  const kinds = earnedByKind(all);
  expect(kinds.map((k) => [k.kind, k.pieces, k.margin])).toEqual([
    ['tray', 1, 29_000],
    ['stool', 2, 8000 + 6000],
  ]);
  // 30 + 10 + 40 + 40 minutes a piece.
  expect(kinds.map((k) => [k.minutes, k.perBenchHour])).toEqual([
    [120, 14_500],
    [240, 3500],
  ]);
});

describe('hours that were really worked', () => {
  const opening = (spans: readonly (readonly [number, number])[]) =>
    spans.map(([from, to]) => ({ from: from * 60, to: to * 60 }));
  const workday = opening([
    [8, 12],
    [13, 17],
  ]);
  const hours = {
    week: {
      monday: workday,
      tuesday: workday,
      wednesday: workday,
      thursday: workday,
      friday: workday,
      saturday: [],
      sunday: [],
    },
    days: {},
  };
  test.each([
    ['over lunch', '2027-01-11', '11:00', '2027-01-11', '14:00', 120],
    ['over a night', '2027-01-11', '16:00', '2027-01-12', '09:00', 120],
    ['over a weekend', '2027-01-15', '16:30', '2027-01-18', '08:30', 60],
    ['in the evening', '2027-01-11', '18:00', '2027-01-11', '20:00', 120],
    ['until late', '2027-01-11', '16:00', '2027-01-11', '19:00', 180],
    ['into the lunch break', '2027-01-11', '11:00', '2027-01-11', '12:30', 90],
  ])('%s', (_, day, from, lastDay, to, minutes) => {
    expect(workedMinutes({ opening: hours, timeZone: zone }, { start: at(day, from), end: at(lastDay, to) })).toBe(
      minutes,
    );
  });
});

test('the shares of the pieces in the shop add up to what its days cost, to the last cent', () => {
  const day = 1440;
  const start = at('2027-01-04', '00:00');
  const anyStay = fc.tuple(fc.integer({ min: 0, max: 20 * day }), fc.integer({ min: 0, max: 20 * day }));
  fc.assert(
    fc.property(
      fc.array(anyStay, { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 0, max: 5000 }),
      (stays, perDay) => {
        const presences = stays.map(([from, length], i) => ({
          piece: `p${i}`,
          from: start + from,
          to: start + from + length,
        }));
        const held = heldCosts(presences, perDay, start + 10 * day, zone);
        // Whoever leaves at midnight does not begin another day.
        const daysOf = ({ from, to }: { readonly from: number; readonly to: number }) => {
          const first = Math.floor((from - start) / day);
          const last = Math.floor((Math.max(from, to - 1) - start) / day);
          return Array.from({ length: last - first + 1 }, (_, i) => first + i);
        };
        const inUse = new Set(presences.flatMap(daysOf));
        const costs = [...held.values()];
        expect(costs.reduce((sum, h) => sum + h.minor, 0)).toBe(inUse.size * perDay);
        const past = [...inUse].filter((d) => d <= 10).length;
        expect(costs.reduce((sum, h) => sum + h.minorSoFar, 0)).toBe(past * perDay);
        presences.forEach((p) => {
          expect(held.get(p.piece)?.days).toBe(daysOf(p).length);
        });
      },
    ),
  );
});
