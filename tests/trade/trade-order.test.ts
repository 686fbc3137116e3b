// What the trade would not do, rule by rule: common practice, no source.
import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { gritLadder } from '../../src/model/grit.ts';
import type { RecipeStep } from '../../src/model/recipe.ts';
import { sectionSteps } from '../../src/model/section-steps.ts';
import { tradeProblems } from '../../src/model/trade-order.ts';
import { sorts, step } from './steps.ts';

function problems(...steps: readonly RecipeStep[]): string[] {
  const chain = sectionSteps(steps, { without: [] });
  return tradeProblems(chain, (id) => sorts.get(id)).map((p) => `${p.code} ${p.step}`);
}

const sand = (grit: number, tacked = false) =>
  step(`sand-${grit}`, 'sand', { grit, supplies: tacked ? ['tack-cloth'] : [] });
const lay = (id: string, stage: RecipeStep['stage'], also: Partial<RecipeStep> = {}) =>
  step(id, stage, { material: id, ...also });

describe('grits', () => {
  const grade = fc.nat(gritLadder.length - 1);
  it('go from coarse to fine and pass over one grade at most, on the same surface', () => {
    fc.assert(
      fc.property(fc.array(grade, { minLength: 1, maxLength: 7 }), (grades) => {
        const steps = grades.map((g, i) => step(`s${i}`, 'sand', { grit: gritLadder[g] ?? 0 }));
        const wrong = grades.flatMap((g, i) => {
          const rise = g - (grades[i - 1] ?? g);
          return rise < 0 ? [`grit-goes-back s${i}`] : rise > 2 ? [`grit-jump s${i}`] : [];
        });
        expect(problems(...steps)).toEqual(wrong);
      }),
    );
  });

  it('too far apart are told the grade that goes between, which is no jump from the coarser', () => {
    const told = tradeProblems(sectionSteps([sand(80), sand(320)], { without: [] }), (id) => sorts.get(id));
    // By hand: 80, 120, 180 is two grades up.
    expect(told.map((p) => p.advice)).toEqual(['pass over one grade at most: sand with 180 in between']);
  });

  it('off the ladder count by the grades between them', () => {
    expect(problems(sand(60), sand(150))).toEqual(['grit-jump sand-150']);
    expect(problems(sand(100), sand(150), sand(240))).toEqual([]);
  });

  it('begin anew on a new film, but not after a wash', () => {
    expect(problems(sand(220, true), lay('varnish', 'topcoat'), step('level', 'sand', { grit: 120 }))).toEqual([]);
    expect(problems(sand(80), lay('water', 'clean'), sand(220))).toEqual(['grit-jump sand-220']);
  });
});

describe('dust', () => {
  it('is taken off between the last sanding and a coat', () => {
    expect(problems(sand(180), lay('varnish', 'topcoat'))).toEqual(['dust-under-coat varnish']);
    expect(problems(sand(180, true), lay('varnish', 'topcoat'))).toEqual([]);
    expect(problems(sand(180), step('vacuum', 'clean'), lay('varnish', 'topcoat'))).toEqual([]);
    expect(problems(sand(180, true), sand(220), lay('varnish', 'topcoat'))).toEqual(['dust-under-coat varnish']);
  });

  it('is taken off between coats too', () => {
    const coats = (scuff: RecipeStep) => lay('varnish', 'topcoat', { coats: 3, between: [scuff] });
    expect(problems(coats(sand(320)))).toEqual(['dust-under-coat varnish-2', 'dust-under-coat varnish-3']);
    expect(problems(coats(sand(320, true)))).toEqual([]);
  });
});

describe('tape', () => {
  it('goes on a finish no sooner than its tape mark', () => {
    const taped = (needs: RecipeStep['needs']) =>
      problems(lay('varnish', 'coat'), lay('tape', 'mask', needs === undefined ? {} : { needs }));
    expect(taped('touch')).toEqual(['tape-too-soon tape']);
    expect(taped('handle')).toEqual(['tape-too-soon tape']);
    expect([...taped(undefined), ...taped('tape'), ...taped('stack'), ...taped('cure')]).toEqual([]);
  });

  it('goes on bare wood whenever it likes, and never on wax', () => {
    expect(problems(lay('tape', 'mask', { needs: 'touch' }))).toEqual([]);
    expect(problems(lay('wax', 'topcoat'), lay('tape', 'mask'))).toEqual(['tape-on-wax tape']);
  });
});

describe('wax', () => {
  it('comes after all paint, filler and glue; only wax goes on wax', () => {
    for (const [id, stage] of [
      ['varnish', 'coat'],
      ['putty', 'fill'],
      ['glue', 'repair'],
    ] as const)
      expect(problems(lay('wax', 'topcoat'), lay(id, stage))).toContain(`coat-over-wax ${id}`);
    expect(problems(lay('varnish', 'topcoat'), lay('wax', 'topcoat', { coats: 2 }))).toEqual([]);
  });
});

describe('repairs', () => {
  it('are glued before they are filled', () => {
    expect(problems(lay('putty', 'fill'), lay('glue', 'repair'), sand(120))).toEqual(['glue-after-fill glue']);
    expect(problems(lay('glue', 'repair'), lay('putty', 'fill'), sand(120))).toEqual([]);
  });

  it('are sanded before the coat, but caulk never is', () => {
    expect(problems(lay('putty', 'fill'), lay('varnish', 'coat'))).toEqual(['fill-not-sanded putty']);
    expect(problems(sand(220, true), lay('putty', 'fill'), lay('varnish', 'coat'), sand(320))).toEqual([
      'fill-not-sanded putty',
    ]);
    expect(problems(lay('caulk', 'fill'), sand(220, true), lay('varnish', 'coat'))).toEqual([
      'sands-what-stays-soft sand-220',
    ]);
    expect(problems(sand(220, true), lay('caulk', 'fill'), lay('varnish', 'coat'), sand(320))).toEqual([]);
  });
});

describe('the grain of bare wood', () => {
  const bare = [sand(80), sand(120), sand(180, true)];
  it('is raised and knocked back before a water-borne coat', () => {
    expect(problems(...bare, lay('clear', 'topcoat'))).toEqual(['grain-not-raised clear']);
    expect(problems(...bare, lay('water', 'clean'), sand(220, true), lay('clear', 'topcoat'))).toEqual([]);
    expect(problems(...bare, lay('water', 'clean'), lay('clear', 'topcoat'))).toEqual(['grain-not-raised clear']);
    expect(problems(...bare, lay('spirit', 'clean'), sand(220, true), lay('clear', 'topcoat'))).toEqual([
      'grain-not-raised clear',
    ]);
  });

  it('need not be under a sealer, a primer or what holds no water', () => {
    expect(problems(...bare, lay('shellac', 'prime'), sand(320, true), lay('clear', 'topcoat'))).toEqual([]);
    expect(problems(...bare, lay('clear', 'prime'))).toEqual([]);
    expect(problems(...bare, lay('varnish', 'topcoat'))).toEqual([]);
    expect(problems(sand(180, true), lay('clear', 'topcoat'))).toEqual([]);
  });
});
