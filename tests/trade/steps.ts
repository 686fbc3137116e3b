import type { Family, Material, Mechanism } from '../../src/model/material.ts';
import type { Mark } from '../../src/model/mark.ts';
import type { RecipeStep, Stage } from '../../src/model/recipe.ts';

/** A step with nothing in it but its id, its stage and what the test is about. */
export function step(id: string, stage: Stage, also: Partial<RecipeStep> = {}): RecipeStep {
  return {
    id,
    title: id,
    stage,
    ways: [],
    supplies: [],
    people: 1,
    dusty: stage === 'sand',
    mayPause: false,
    coats: 1,
    between: [],
    disturbsOldPaint: false,
    source: 'made up for the test',
    ...also,
  };
}

function material(id: string, family: Family, mechanism: Mechanism, marks: readonly Mark[]): [string, Material] {
  const source = 'made up for the test';
  const hours = { low: 1, typical: 1, high: 1, source };
  return [
    id,
    {
      id,
      name: id,
      family,
      mechanism,
      reference: { tempC: 23, rhPercent: 50 },
      marks: Object.fromEntries(marks.map((mark) => [mark, hours])),
      windows: [],
      stack: [],
      cautions: [],
      source,
    },
  ];
}

/** One made-up material of each sort that the rules tell apart. */
export const sorts: ReadonlyMap<string, Material> = new Map([
  material('clear', 'water-borne', 'water', ['touch', 'tape', 'sand', 'recoat', 'handle']),
  material('varnish', 'oil', 'oxidation', ['touch', 'tape', 'sand', 'recoat', 'handle']),
  material('shellac', 'shellac', 'solvent', ['touch', 'sand', 'recoat', 'handle']),
  material('wax', 'wax', 'solvent', ['touch', 'recoat', 'handle']),
  material('water', 'cleaner', 'wood-water', ['touch', 'sand', 'recoat']),
  material('spirit', 'cleaner', 'solvent', ['touch', 'recoat']),
  material('glue', 'glue', 'pva-glue', ['sand', 'handle']),
  material('putty', 'filler', 'two-part', ['sand', 'recoat']),
  material('caulk', 'filler', 'water', ['recoat']),
  material('tape', 'tape', 'none', []),
]);
