// What a thicker film, the shop's own factor and the pace do to a sheet's hours, at the sheet's own air: no figure but
// the sheet's, and Fick's law (textbook: what leaves through a film takes the square of its thickness).
import { expect, test } from 'vitest';
import { dryMap, markTimes } from '../../src/drying/dry-marks.ts';
import { potLifeMap } from '../../src/drying/pot-life.ts';
import { windowMaps } from '../../src/drying/windows.ts';
import fc from '../support/property.ts';
import { film, hours, madeUp, still, t0 } from './arbitrary.ts';

const air = still(23, 50);
const marks = { touch: hours(2, 1, 4), sand: hours(12, 8, 20) };
const oil = madeUp({ mechanism: 'oxidation', marks });
const minutes = (h: number) => Math.ceil(h * 60 - 1e-3);

test('each pace has its own figure of the sheet', () => {
  expect(markTimes(oil, film, air, t0)).toEqual({
    touch: { early: t0 + 60, typical: t0 + 120, late: t0 + 240 },
    sand: { early: t0 + 480, typical: t0 + 720, late: t0 + 1200 },
  });
});

test('hours are those of the sheet, times the square of the thickness, times what the shop has learned', () => {
  fc.assert(
    fc.property(fc.constantFrom(0.5, 0.8, 1, 1.5), fc.constantFrom(0.5, 1, 1.25, 2), (thickness, factor) => {
      const scale = thickness ** 2 * factor;
      const laid = { ...film, thickness };
      expect(dryMap(oil, 'sand', 'late', laid, air, factor).at(t0)).toBe(t0 + minutes(20 * scale));
      expect(markTimes(oil, laid, air, t0, factor).touch?.typical).toBe(t0 + minutes(2 * scale));
      const window = { opens: hours(3, 2, 4), shuts: hours(30, 24, 48) };
      const { opens, shuts } = windowMaps(window, oil, laid, air, factor);
      expect(opens.at(t0)).toBe(t0 + minutes(4 * scale));
      // Never later than the sheet's own hours.
      expect(shuts?.at(t0)).toBe(t0 + Math.floor(24 * 60 * Math.min(1, scale) + 1e-3));
    }),
    { numRuns: 100 },
  );
});

test('pot life: the fast end, of what is mixed in one go', () => {
  const mixed = madeUp({ mechanism: 'two-part', potLife: hours(6, 4, 8) });
  expect(potLifeMap(mixed, air)?.at(t0)).toBe(t0 + 240);
  expect(potLifeMap(mixed, air, 'typical')?.at(t0)).toBe(t0 + 360);
  expect(potLifeMap({ ...mixed, sheetDepthMm: 3 }, air)).toBeUndefined();
});
