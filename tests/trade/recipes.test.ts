// Facts of the trade that the shipped recipes must show: common practice, no source, unless a test names one.
import { describe, expect, it } from 'vitest';
import { stackProblems } from '../../src/drying/stack.ts';
import { isFullCoat } from '../../src/model/film-needs.ts';
import type { ChainStep } from '../../src/model/section-steps.ts';
import { recipeTradeProblems } from '../../src/model/trade-order.ts';
import { demo, material, read, recipe, steps } from './shipped.ts';

const bareWood = ['stained-oil-topcoat', 'clear-water-borne', 'shellac-lacquer', 'oil-polyurethane'];
const painted = ['painted-sprayed', 'painted-brushed'];
const all = () => [...demo().recipes.keys()];

function isCoat(step: ChainStep): boolean {
  const laid = material(step.recipeStep.material);
  return laid !== undefined && isFullCoat(laid);
}

function ids(chain: readonly ChainStep[]): string[] {
  return chain.map((s) => s.id);
}

function find(chain: readonly ChainStep[], id: string): ChainStep {
  const found = chain.find((s) => s.id === id);
  if (found === undefined) throw new Error(`there is no step ${id}`);
  return found;
}

/** Fails unless all are there, in this order, others between them or not. */
function inOrder(chain: readonly ChainStep[], wanted: readonly string[]): void {
  expect(ids(chain).filter((id) => wanted.includes(id))).toEqual(wanted);
}

describe('the shipped recipes', () => {
  it('are read without a finding, and cover the trade', () => {
    expect(read.findings).toEqual([]);
    expect(all()).toEqual(
      expect.arrayContaining([
        'clear-water-borne',
        'drawers',
        'hardwax-oil',
        'metal-hardware',
        'milk-paint-wax',
        'oil-polyurethane',
        'painted-brushed',
        'painted-sprayed',
        'shellac-lacquer',
        'stained-oil-topcoat',
        'whole-piece',
        'whole-piece-alone',
        'whole-piece-plain',
      ]),
    );
  });

  it('lay down known materials, and do nothing that the trade would not', () => {
    for (const id of all()) {
      const known = steps(id).flatMap(({ recipeStep: { material: m } }) => (m === undefined ? [] : [m]));
      expect(known.filter((m) => !demo().materials.has(m))).toEqual([]);
      expect(recipeTradeProblems(recipe(id), demo().materials)).toEqual([]);
    }
  });

  it('ask of people five to thirty steps a section', () => {
    for (const id of all()) {
      expect(steps(id).length).toBeGreaterThanOrEqual(5);
      expect(steps(id).length).toBeLessThanOrEqual(30);
    }
  });
});

describe('bare wood', () => {
  it.each(bareWood)('goes through 80, 120, 180, 220, dust off after each, a tack cloth at the end: %s', (id) => {
    const chain = steps(id);
    const first = chain.findIndex((s) => isCoat(s) || material(s.recipeStep.material)?.id === 'grain-filler');
    const sanded = chain.slice(0, first).filter((s) => s.recipeStep.stage === 'sand');
    expect(sanded.map((s) => s.recipeStep.grit)).toEqual([80, 120, 180, 220]);
    for (const s of sanded) expect(s.recipeStep.title).toContain('vacuum off');
    expect(sanded.at(-1)?.recipeStep.supplies).toContain('tack-cloth');
  });

  it('for hardwax oil stops at 180', () => {
    const grits = steps('hardwax-oil').flatMap(({ recipeStep: { grit } }) => (grit === undefined ? [] : [grit]));
    expect(grits).toEqual([80, 120, 180]);
  });
});

describe('a painted section', () => {
  it.each(painted)(
    'is cleaned, glued, filled, sanded, primed, looked over, filled again, scuffed, coated: %s',
    (id) => {
      inOrder(steps(id), [
        'wash',
        'glue',
        'fill',
        'sand-120',
        'sand-180',
        'prime',
        'inspect-primer',
        'fill-flaws',
        'scuff-primer',
        'coat-1',
        'scuff-1',
        'coat-2',
      ]);
    },
  );

  it.each(painted)('is primed lightly, and its flaws filled with a filler of another colour: %s', (id) => {
    const chain = steps(id);
    expect(find(chain, 'prime').recipeStep.title).toMatch(/light coat/);
    expect(find(chain, 'fill-flaws').recipeStep.title).toMatch(/another colour/);
    expect(find(chain, 'fill-flaws').recipeStep.material).not.toBe(find(chain, 'fill').recipeStep.material);
  });

  it('has its flush drawers sprayed in place, sheeted off, and the sheets pulled after the last coat', () => {
    const chain = steps('painted-sprayed');
    inOrder(chain, ['sheet-off', 'prime', 'coat-1', 'coat-2', 'unsheet']);
    expect(find(chain, 'sheet-off').recipeStep.title).toMatch(/flush drawers in place, sheeted off/);
    expect(find(chain, 'unsheet').recipeStep.unmasks).toBe('sheet-off');
  });

  it('gets its caulk after the last sanding of the primer, before the enamel', () => {
    inOrder(steps('painted-brushed'), ['fill', 'scuff-primer', 'caulk', 'coat-1']);
    expect(material('acrylic-caulk')?.marks.sand).toBeUndefined();
  });
});

describe('the gun', () => {
  it('is fed with strained, slightly thinned material, after a trial pass', () => {
    const sprayed = all()
      .flatMap(steps)
      .filter((s) => s.recipeStep.ways.some((w) => w.tools.includes('sprayer')));
    expect(sprayed.length).toBeGreaterThan(0);
    for (const { recipeStep } of sprayed) {
      expect(recipeStep.supplies).toContain('strainer');
      expect(recipeStep.title).toMatch(/^Strain, thin slightly, trial pass, /);
      const byGun = recipeStep.ways.filter((w) => w.tools.includes('sprayer'));
      for (const way of byGun) expect(way).toMatchObject({ skill: 'spray', stations: ['spray'] });
    }
  });

  it('brings at least 65 % onto the work (Utah R307-343-5), the brush more (common practice, no source)', () => {
    const ways = all().flatMap((id) => steps(id).flatMap((s) => (isCoat(s) ? s.recipeStep.ways : [])));
    for (const way of ways) {
      if (way.tools.includes('sprayer')) expect(way.transferEfficiency).toBe(0.65);
      else if (!way.stations.includes('spray')) expect(way.transferEfficiency).toBeGreaterThanOrEqual(0.9);
    }
  });
});

describe('coats', () => {
  it('are scuffed between, but for lacquer, which melts into itself, and what has a window of its own', () => {
    const several = all().flatMap((id) => recipe(id).steps.filter((s) => s.coats > 1));
    const bare = several.filter((s) => !s.between.some((b) => b.stage === 'sand'));
    expect(bare.map((s) => s.material).sort()).toEqual([
      'alkyd-aerosol-enamel',
      'hardwax-oil',
      'nitrocellulose-lacquer',
    ]);
  });

  it('of wax come last', () => {
    for (const id of ['milk-paint-wax', 'shellac-lacquer', 'metal-hardware'])
      expect(steps(id).at(-1)?.recipeStep.material).toBe('paste-wax');
  });

  it('of lacquer lie on a shellac seal, on grain filled 24 h before (NAVEDTRA 14044)', () => {
    const chain = steps('shellac-lacquer');
    inOrder(chain, [
      'grain-fill',
      'sand-filled',
      'seal',
      'denib',
      'lacquer-1',
      'lacquer-2',
      'lacquer-3',
      'rub-out',
      'wax',
    ]);
    expect(find(chain, 'sand-filled').recipeStep.after).toEqual([{ step: 'grain-fill', waitHours: 24 }]);
    expect(find(chain, 'sand-filled').recipeStep.source).toContain('NAVEDTRA 14044');
  });
});

describe('the whole piece', () => {
  it('is photographed, taken apart with its screws bagged and cleaned underneath; refitted, waxed, photographed, wrapped', () => {
    const whole = recipe('whole-piece').steps;
    expect(whole.filter((s) => s.joins === 'begin').map((s) => s.id)).toEqual([
      'look-over',
      'dismantle',
      'clean-underside',
    ]);
    expect(whole.filter((s) => s.joins === 'end').map((s) => s.id)).toEqual([
      'refit',
      'wax-runners',
      'photograph',
      'wrap',
    ]);
    expect(whole.find((s) => s.id === 'look-over')?.title).toMatch(/photograph/);
    expect(whole.find((s) => s.id === 'dismantle')?.supplies).toContain('zip-bag');
    expect(whole.find((s) => s.id === 'wrap')?.needs).toBe('stack');
  });

  it('has hardware cleaned apart and drawer boxes whose runners stay bare until they are waxed', () => {
    inOrder(steps('metal-hardware'), ['wash', 'polish', 'wipe', 'enamel-1', 'enamel-2', 'wax']);
    expect(find(steps('drawers'), 'seal').recipeStep.title).toMatch(/leave the runners bare/);
  });
});

describe('care', () => {
  const laid = () =>
    all()
      .flatMap((id) => steps(id))
      .map(({ recipeStep: step }) => ({ step, of: material(step.material) }));

  it('for oily rags stands at each oil', () => {
    const oily = laid().filter(({ of }) => of?.oilyRags === true);
    expect(oily.map(({ step }) => step.material)).toEqual(
      expect.arrayContaining(['oil-wiping-stain', 'wiping-varnish', 'hardwax-oil', 'oil-based-polyurethane']),
    );
    for (const { step } of oily) expect(step.caution).toMatch(/rags/i);
  });

  it('for flame and vapour stands at all that burns', () => {
    const burning = laid().filter(({ of }) => of?.flammableVapour === true && of.family !== 'wax');
    expect(burning.length).toBeGreaterThan(0);
    for (const { step } of burning) expect(step.caution).toMatch(/flam|vapour|rags|alight/i);
  });

  it('for dust stands at all sanding', () => {
    for (const { step } of laid()) if (step.stage === 'sand') expect(step.caution).toMatch(/dust mask/i);
  });

  it('for lead: nothing abrades an old finish but behind the gate', () => {
    for (const id of all()) {
      const chain = steps(id);
      const stripped = chain.find((s) => s.recipeStep.supplies.includes('stripper'));
      const first = chain.findIndex(isCoat);
      const abrading = chain.slice(0, first < 0 ? 0 : first).filter((s) => s.recipeStep.stage === 'sand');
      if (id === 'drawers') continue; // boxes and runners were never painted
      for (const s of stripped === undefined ? abrading : [stripped]) expect(s.recipeStep.disturbsOldPaint).toBe(true);
    }
  });
});

describe('films', () => {
  it('lie on what takes them; where they must wait for a mark beneath, the step says so', () => {
    for (const id of all()) {
      const laid = steps(id).flatMap(({ recipeStep: step }) => {
        const of = material(step.material);
        return of === undefined ? [] : [{ step, of }];
      });
      const problems = stackProblems(laid.map(({ of }) => of));
      expect([id, problems.filter((p) => p.verdict === 'no')]).toEqual([id, []]);
      for (const p of problems) {
        const upper = laid.find(({ of }) => of.id === p.upper);
        expect([id, p.upper, upper?.step.needs]).toEqual([id, p.upper, p.mark]);
      }
    }
  });
});
