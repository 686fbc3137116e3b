import { expect, test } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import { dryMap } from '../../src/drying/dry-marks.ts';
import type { Entry, Sighting } from '../../src/model/journal.ts';
import { factorsOf } from '../../src/planning/factors.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { filmBook, COAT_1, COAT_2, start } from './film-book.ts';

const HOUR = 60;
const end = start + HOUR;

function seen(
  sighting: Sighting,
  hoursAfter: number,
): { factors: ReadonlyMap<string, number>; late: number; early: number } {
  const journal: Entry[] = [
    { number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } },
    { number: 2, at: end + hoursAfter * HOUR, deed: { kind: 'seen', task: COAT_1, sighting } },
  ];
  const book = filmBook({ journal });
  const air = shopAir(book.shop, start - 1440, start + 60 * 1440);
  const situation = situationOf(book, end + hoursAfter * HOUR);
  const factors = factorsOf(situation, air);
  const room = air.get('room');
  const material = book.materials.get('paint');
  if (room === undefined || material === undefined) throw new Error('no air, or no paint');
  const touch = (pace: 'early' | 'typical' | 'late') =>
    dryMap(material, 'touch', pace, { material: 'paint', thickness: 1 }, room, factors.get(COAT_1) ?? 1).at(end);
  return { factors, late: touch('late'), early: touch('typical') };
}

test('nothing seen, nothing learned', () => {
  const book = filmBook({});
  expect(factorsOf(situationOf(book, start), shopAir(book.shop, start - 1440, start + 1440)).size).toBe(0);
});

test('a film still tacky is not taken for touch-dry before it was seen so, and the next coat of the same is slower, too', () => {
  for (const hours of [3, 6, 12, 30]) {
    const { factors, early } = seen('tacky', hours);
    expect(early).toBeGreaterThan(end + hours * HOUR);
    // Ten times the sheet's hours say something of that film, and nothing of the paint.
    if (hours < 10) expect(factors.get(COAT_2) ?? 1).toBeGreaterThan(1);
    expect(factors.get(COAT_2) ?? 1).toBeLessThanOrEqual(2);
  }
});

test('a film seen dry early shortens its hours, but never to less than half', () => {
  const at90Minutes = seen('dry', 1.5).factors.get(COAT_1) ?? 1;
  expect(at90Minutes).toBeLessThan(1);
  expect(seen('dry', 0.1).factors.get(COAT_1) ?? 1).toBeGreaterThanOrEqual(0.5);
});

test('what is no news changes little: tacky when it must be, dry when it long is', () => {
  expect(seen('tacky', 0.2).factors.get(COAT_2) ?? 1).toBeCloseTo(1, 1);
  expect(seen('dry', 40).factors.get(COAT_2) ?? 1).toBeCloseTo(1, 1);
});

test('one look moves the next film less than many looks do', () => {
  const looks = (count: number): number => {
    const journal: Entry[] = [
      { number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } },
      ...Array.from({ length: count }, (_, i): Entry => ({
        number: i + 2,
        at: end + 2 * HOUR + 15 + i,
        deed: { kind: 'seen', task: COAT_1, sighting: 'tacky' },
      })),
    ];
    const book = filmBook({ journal });
    return (
      factorsOf(situationOf(book, end + 5 * HOUR), shopAir(book.shop, start - 1440, start + 1440)).get(COAT_2) ?? 1
    );
  };
  expect(looks(8)).toBeGreaterThan(looks(1));
});

test('a missed last window: the film cures, is scuffed, and is coated; the plan says so', () => {
  const journal: Entry[] = [{ number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } }];
  const book = filmBook({ journal });
  const made = makePlan(situationOf(book, end + 60 * HOUR), { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  const scuff = made.plan.steps.find((s) => s.id === `${COAT_2}-remedy-scuff`);
  const coat = made.plan.steps.find((s) => s.id === COAT_2);
  expect(coat?.window?.prep).toBe('scuff');
  // Cured after 100 h at 23 °C and 50 % RH, which is this room's air.
  expect(scuff?.spans[0]?.start).toBeGreaterThanOrEqual(end + 100 * HOUR);
  expect(made.plan.warnings.filter((w) => w.code === 'window-missed').map((w) => w.step)).toEqual([COAT_2]);
});

test('within its window the coat needs no remedy', () => {
  const journal: Entry[] = [{ number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } }];
  const made = makePlan(situationOf(filmBook({ journal }), end + HOUR), { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  expect(made.plan.steps.some((s) => s.id.includes('remedy'))).toBe(false);
  expect(made.plan.warnings.filter((w) => w.code === 'window-missed')).toEqual([]);
});

test('without a cure mark a missed film comes off', () => {
  const journal: Entry[] = [{ number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } }];
  const made = makePlan(situationOf(filmBook({ journal, cures: false }), end + 60 * HOUR), { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error(made.kind);
  expect(made.plan.steps.find((s) => s.id === COAT_2)?.window?.prep).toBe('strip');
  expect(made.plan.warnings.some((w) => w.code === 'window-missed' && w.text.includes('come off'))).toBe(true);
});

test('a latest hour that has passed is given up, with a warning, and not before', () => {
  const journal: Entry[] = [{ number: 1, at: end, deed: { kind: 'done', task: COAT_1, from: start, to: end } }];
  const planAt = (hours: number) =>
    makePlan(situationOf(filmBook({ journal, withinHours: 20 }), end + hours * HOUR), { seed: 1, steps: 200 });
  const [soon, late] = [planAt(3), planAt(24)];
  if (soon.kind !== 'plan' || late.kind !== 'plan') throw new Error('no plan');
  expect(soon.plan.warnings.filter((w) => w.code === 'limit-missed')).toEqual([]);
  expect(late.plan.warnings.filter((w) => w.code === 'limit-missed').map((w) => w.step)).toEqual([COAT_2]);
});
