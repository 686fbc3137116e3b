import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { windowMaps } from '../../src/drying/windows.ts';
import { dryMap, markTimes } from '../../src/drying/dry-marks.ts';
import { potLifeMap } from '../../src/drying/pot-life.ts';
import { anyMechanism, film, hours, madeUp, still, t0, wildAir } from './arbitrary.ts';

const start = fc.integer({ min: t0, max: t0 + 8000 });

describe('the shutting edge', () => {
  const window = { opens: hours(1), shuts: hours(30, 24, 48) };

  it('is never later than the low end of the sheet, whatever the air, film or shop', () => {
    fc.assert(
      fc.property(
        wildAir(),
        anyMechanism,
        start,
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (air, mechanism, t, factor) => {
          const { shuts } = windowMaps(
            window,
            madeUp({ mechanism }),
            { material: 'x', thickness: factor },
            air,
            factor,
          );
          expect(shuts!.at(t)).toBeLessThanOrEqual(t + 24 * 60);
          expect(shuts!.at(t)).toBeGreaterThanOrEqual(t);
        },
      ),
    );
  });

  it('comes sooner in warm air: 24 h at 23 °C are 12.4 h at 33 °C with 50 kJ/mol (× 0.515, calculated)', () => {
    const material = madeUp({ mechanism: 'oxidation', activationKJPerMol: 50 });
    expect((windowMaps(window, material, film, still(33, 50)).shuts!.at(t0) - t0) / 60).toBeCloseTo(24 * 0.515, 1);
    expect(windowMaps(window, material, film, still(13, 50)).shuts!.at(t0)).toBe(t0 + 24 * 60);
  });

  it('comes sooner in dry air for a water-borne film', () => {
    const dry = windowMaps(window, madeUp({}), film, still(23, 20)).shuts!.at(t0);
    expect(dry).toBeLessThan(t0 + 24 * 60);
  });
});

describe('the opening edge', () => {
  it('goes by the slow end of the spread, and both ways with the air', () => {
    const material = madeUp({ mechanism: 'oxidation', activationKJPerMol: 50 });
    const opens = (tempC: number) =>
      windowMaps({ opens: hours(4, 2, 6) }, material, film, still(tempC, 50)).opens.at(t0) - t0;
    expect(opens(23)).toBe(6 * 60);
    expect(opens(13) / 360).toBeCloseTo(2.033, 2);
    expect(opens(33) / 360).toBeCloseTo(0.515, 2);
  });
});

describe('marks', () => {
  it('come early, typical, late in that order, and only those that the material has', () => {
    fc.assert(
      fc.property(wildAir(), anyMechanism, start, (air, mechanism, t) => {
        const material = madeUp({ mechanism, marks: { touch: hours(1, 0.5, 2), cure: hours(50, 30, 60) } });
        const times = markTimes(material, film, air, t);
        expect(Object.keys(times)).toEqual(['touch', 'cure']);
        for (const { early, typical, late } of Object.values(times)) {
          expect(early).toBeLessThanOrEqual(typical);
          expect(typical).toBeLessThanOrEqual(late);
        }
      }),
    );
  });

  it('follow what the shop has learned', () => {
    const material = madeUp({ mechanism: 'oxidation', marks: { sand: hours(10) } });
    expect(dryMap(material, 'sand', 'typical', film, still(23, 50), 1.5).at(t0)).toBe(t0 + 900);
  });

  it('that the material does not have ask no wait', () => {
    expect(dryMap(madeUp({}), 'sand', 'late', film, still(23, 50)).at(t0)).toBe(t0);
  });
});

describe('pot life', () => {
  // Two-part epoxy: about 6 h at 73 °F (MO-124); 57 kJ/mol after Thermochimica Acta 447 (2006) 167–177.
  const epoxy = madeUp({ mechanism: 'two-part', activationKJPerMol: 57, potLife: hours(6) });

  it('shortens in the warm and is never longer than the sheet in the cold', () => {
    const life = (tempC: number) => (potLifeMap(epoxy, still(tempC, 50))!.at(t0) - t0) / 60;
    expect(life(23)).toBeCloseTo(6, 1);
    expect(life(33)).toBeLessThan(3.1);
    expect(life(33)).toBeGreaterThan(2.7);
    expect(life(10)).toBe(6);
  });

  it('does not exist for what is not mixed', () => {
    expect(potLifeMap(madeUp({}), still(23, 50))).toBeUndefined();
  });
});
