import { describe, expect, it } from 'vitest';
import { breaches } from '../../src/drying/air-limits.ts';
import { filmFactor } from '../../src/drying/film-factor.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import { bridges, stackProblems } from '../../src/drying/stack.ts';
import type { Mark } from '../../src/model/mark.ts';
import type { Material } from '../../src/model/material.ts';
import { table } from '../support/tables.ts';
import { demo } from '../trade/shipped.ts';

const materials = [...demo().materials.values()];
const named = (id: string): Material => {
  const found = demo().materials.get(id);
  if (found === undefined) throw new Error(`no class ${id}`);
  return found;
};
const marksInTable = ['touch', 'sand', 'recoat', 'tape', 'handle', 'stack', 'cure'] as const;

describe('the shipped classes', () => {
  it('are at least thirty', () => {
    expect(materials.length).toBeGreaterThanOrEqual(30);
  });

  it.each(table('classes'))('$material has the hours of the table of classes', (row) => {
    const material = named(row['material'] ?? '');
    for (const mark of marksInTable) {
      const cell = row[mark] ?? '';
      if (cell === '') continue;
      const [, typical, low, high] = /^([\d.]+)(?: \[([\d.]+)-([\d.]+)\])?$/.exec(cell) ?? [];
      const sheet = material.marks[mark];
      expect([mark, sheet?.typical]).toEqual([mark, expect.closeTo(Number(typical), 2)]);
      if (low !== undefined) expect(sheet?.low).toBeCloseTo(Number(low), 2);
      if (high !== undefined) expect(sheet?.high).toBeCloseTo(Number(high), 2);
    }
  });

  it.each(materials.map((m) => [m.id, m] as const))('%s has its marks in the order in which films harden', (_, m) => {
    const ladder: Mark[] = ['dust-free', 'touch', 'handle', 'stack', 'cure'];
    const present = ladder.flatMap((mark) => m.marks[mark] ?? []);
    for (const [i, sheet] of present.entries()) {
      expect(sheet.low).toBeGreaterThan(0);
      const next = present[i + 1];
      if (next === undefined) continue;
      expect(sheet.low).toBeLessThanOrEqual(next.low);
      expect(sheet.typical).toBeLessThanOrEqual(next.typical);
      expect(sheet.high).toBeLessThanOrEqual(next.high);
    }
  });

  it.each(materials.map((m) => [m.id, m] as const))('%s keeps that order in any air it may be coated in', (_, m) => {
    const ladder = (['dust-free', 'touch', 'handle', 'stack', 'cure'] as const).filter(
      (mark) => m.marks[mark] !== undefined,
    );
    for (const tempC of [8, 12, 18, 23, 30])
      for (const rhPercent of [25, 50, 65, 80]) {
        if (breaches(m, { tempC, rhPercent }).length > 0) continue;
        const times = ladder.map((mark) => (m.marks[mark]?.typical ?? 0) / rateLaw(m, mark).rate(tempC, rhPercent));
        expect(times).toEqual([...times].sort((a, b) => a - b));
      }
  });

  it.each(materials.map((m) => [m.id, m] as const))(
    '%s may be laid on in a good workshop, at 20 °C and 50 %',
    (_, m) => {
      expect(breaches(m, { tempC: 20, rhPercent: 50 })).toEqual([]);
      expect(filmFactor(m, { material: m.id, thickness: 1 })).toBe(1);
    },
  );

  it.each(materials.map((m) => [m.id, m] as const))(
    '%s has windows in order, that can be met in the reference air',
    (_, m) => {
      const opens = m.windows.map((w) => w.opens.typical);
      expect(opens).toEqual([...opens].sort((a, b) => a - b));
      for (const w of m.windows) if (w.shuts !== undefined) expect(w.shuts.low).toBeGreaterThanOrEqual(w.opens.high);
      // past a window that shuts there is another way on, for every family that it is for
      for (const w of m.windows.filter((x) => x.shuts !== undefined))
        expect(m.windows.some((x) => x.shuts === undefined && String(x.under) === String(w.under))).toBe(true);
    },
  );

  it('name only classes that exist as barriers, and barriers that do bridge', () => {
    for (const upper of materials)
      for (const rule of upper.stack) {
        if (rule.barrier === undefined) continue;
        for (const lower of materials.filter((m) => m.family === rule.over))
          expect(bridges(lower, named(rule.barrier), upper)).toBe(true);
      }
  });

  it('warn of rags wherever a drying oil is wiped, and of isocyanates and flames where they are', () => {
    for (const m of materials.filter((x) => x.mechanism === 'oxidation' && x.id !== 'alkyd-aerosol-enamel'))
      expect([m.id, m.oilyRags]).toEqual([m.id, true]);
    for (const m of materials.filter((x) => (x.solventGPerL ?? 0) >= 300))
      expect([m.id, m.flammableVapour]).toEqual([m.id, true]);
    for (const id of ['two-part-polyurethane', 'moisture-cure-polyurethane']) expect(named(id).isocyanate).toBe(true);
  });
});

describe('films on one another', () => {
  const problems = (...ids: string[]) =>
    stackProblems(ids.map(named)).map((p) =>
      `${p.upper} over ${p.lower}: ${p.verdict} ${p.mark ?? ''}${p.barrier ?? ''}`.trim(),
    );

  // Common practice, no source.
  it.each([
    [
      ['hardwax-oil', 'water-borne-acrylic-enamel'],
      ['water-borne-acrylic-enamel over hardwax-oil: after curedewaxed-shellac'],
    ],
    [['hardwax-oil', 'dewaxed-shellac', 'water-borne-acrylic-enamel'], []],
    [['paste-wax', 'alkyd-enamel'], ['alkyd-enamel over paste-wax: no']],
    [['paste-wax', 'paste-wax'], []],
    [['alkyd-enamel', 'nitrocellulose-lacquer'], ['nitrocellulose-lacquer over alkyd-enamel: no dewaxed-shellac']],
    [['oil-primer', 'water-borne-acrylic-enamel', 'water-borne-acrylic-enamel'], []],
    [['paste-wax', 'clean-water-rinse', 'contrast-filler', 'bonding-primer'], ['bonding-primer over paste-wax: no']],
    [['chalk-type-paint', 'paste-wax'], []],
    [['water-borne-polyurethane', 'oil-wiping-stain'], ['oil-wiping-stain over water-borne-polyurethane: no']],
    [[], []],
  ])('%j', (films, expected) => {
    expect(problems(...films)).toEqual(expected);
  });
});
