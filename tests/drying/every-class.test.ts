import { expect, it } from 'vitest';
import type { Spread } from '../../src/model/mark.ts';
import type { Material } from '../../src/model/material.ts';
import { demo } from '../trade/shipped.ts';

/** All that is laid down to stay: coats, fills and glues; not what only cleans, nor tape. */
const stays = [...demo().materials.values()].filter((m) => !['cleaner', 'tape'].includes(m.family));
const isFillOrGlue = (m: Material) => m.family === 'filler' || m.family === 'glue';
const coats = stays.filter((m) => !isFillOrGlue(m));

/** What only reacts gives nothing off. */
const isAllSolid = (m: Material) => m.mechanism === 'two-part' && m.volumeSolidsPercent?.typical === 100;
const spreads = (s: Spread | undefined) => s !== undefined && s.low > 0 && s.low < s.high;
const hasSource = (thing: { readonly source: string } | undefined) => thing !== undefined && thing.source.length > 3;

/** What a class must state, and which classes must. */
const wanted: readonly [string, readonly Material[], (m: Material) => boolean][] = [
  [
    'hours with a spread and a source for every mark',
    stays,
    (m) => marksOf(m).every((h) => spreads(h) && hasSource(h)),
  ],
  ['three marks or more', stays, (m) => marksOf(m).length >= 3],
  ['limits of temperature and humidity', stays, (m) => hasLimits(m)],
  [
    'volume solids with a spread and a source',
    stays,
    (m) => (spreads(m.volumeSolidsPercent) || isAllSolid(m)) && hasSource(m.volumeSolidsPercent),
  ],
  ['a coverage with a spread and a source', coats, (m) => spreads(m.coverageM2PerL) && hasSource(m.coverageM2PerL)],
  ['a recoat window with a source', coats, (m) => m.windows.length > 0 && m.windows.every((w) => hasSource(w.opens))],
  ['a next coat that must wait or may not be, or the word that all may go', coats, (m) => m.stack.length > 0],
  ['a caution', stays, (m) => m.cautions.length > 0],
  ['the room that it leaves for the work', stays.filter((m) => m.family === 'glue'), (m) => m.openTime !== undefined],
  ['a pot life', stays.filter((m) => m.mechanism === 'two-part'), (m) => m.potLife !== undefined],
];

const marksOf = (m: Material) => Object.values(m.marks);

function hasLimits({ limits }: Material): boolean {
  if (limits === undefined) return false;
  return limits.minTempC < limits.maxTempC && limits.minRhPercent < limits.maxRhPercent && hasSource(limits);
}

it('thirty generic classes and more are shipped that stay on the work', () => {
  expect(stays.length).toBeGreaterThanOrEqual(30);
});

it.each(wanted)('every class that should states %s', (_, classes, states) => {
  expect(classes.length).toBeGreaterThan(0);
  expect(classes.filter((m) => !states(m)).map((m) => m.id)).toEqual([]);
});

it('a window that shuts goes on with a later one, which says what preparation the late coat needs', () => {
  const shutting = coats.filter((m) => m.windows.some((w) => w.shuts !== undefined));
  expect(shutting.length).toBeGreaterThanOrEqual(12);
  for (const m of shutting)
    for (const { shuts, under } of m.windows.filter((w) => w.shuts !== undefined)) {
      const late = m.windows.filter((w) => w.shuts === undefined && String(w.under) === String(under));
      expect([m.id, late.length > 0]).toEqual([m.id, true]);
      // "within X or after Y" opens again by itself once it has hardened; all else asks for a preparation
      for (const w of late)
        expect([m.id, w.prep !== undefined || w.opens.low >= (shuts?.low ?? Infinity)]).toEqual([m.id, true]);
    }
});

it('water-borne coats wait for the cure of oil, shellac bridges it, and go over wax not at all', () => {
  const waterBorne = coats.filter((m) => m.family === 'water-borne');
  expect(waterBorne.length).toBeGreaterThanOrEqual(6);
  for (const m of waterBorne) {
    const over = (family: string) => m.stack.find((rule) => rule.over === family);
    expect([m.id, over('oil')]).toMatchObject([m.id, { verdict: 'after', mark: 'cure', barrier: 'dewaxed-shellac' }]);
    expect([m.id, over('wax')]).toMatchObject([m.id, { verdict: 'no' }]);
  }
});
