import type { Book } from '../../src/model/book.ts';
import type { Deed, Entry } from '../../src/model/journal.ts';
import type { Material } from '../../src/model/material.ts';
import type { Piece } from '../../src/model/piece.ts';
import type { RecipeStep } from '../../src/model/recipe.ts';
import { enamel, enamelWindows, glue, putty, shop } from '../verify/fixture.ts';

// One piece with one section that is sanded, filled and twice coated, with a scuff between, and looked at. Figures are
// invented: they stand for no material.

const plain = {
  ways: [
    {
      name: '',
      time: { fixedMinutes: 30, minutesPerM2: 0, minutesPerItem: 0 },
      stations: ['bench'],
      tools: [],
      thickness: 1,
      transferEfficiency: 1,
    },
  ],
  supplies: [],
  people: 1,
  dusty: false,
  mayPause: false,
  coats: 1,
  between: [],
  disturbsOldPaint: false,
  source: 'invented for the test',
} as const;

const stepOf = (id: string, stage: RecipeStep['stage'], over: Partial<RecipeStep> = {}): RecipeStep => ({
  ...plain,
  id,
  title: id,
  stage,
  ...over,
});

export const paint: Material = {
  ...enamel,
  id: 'paint',
  name: 'Paint',
  marks: { ...enamel.marks, sand: enamel.marks.touch! },
  windows: [enamelWindows.early, enamelWindows.late],
};

export const piece: Piece = {
  id: 'box',
  name: 'Box',
  kind: 'box',
  priceMinor: 0,
  costMinor: 0,
  mayCarryLead: true,
  leadTest: { minute: 5, found: false },
  sections: [
    {
      id: 'body',
      name: 'body',
      recipe: 'painted',
      areaM2: 1,
      items: 1,
      thicknessMm: 19,
      materials: {},
      without: [],
    },
  ],
  joins: [],
};

export const book: Book = {
  shop,
  materials: new Map([paint, glue, putty].map((m) => [m.id, m])),
  recipes: new Map([
    [
      'painted',
      {
        id: 'painted',
        name: 'Painted',
        about: '',
        steps: [
          stepOf('sand', 'sand', { dusty: true, mayPause: true, disturbsOldPaint: true }),
          stepOf('fill', 'fill', { material: 'putty' }),
          stepOf('coat', 'coat', { material: 'paint', coats: 2, between: [stepOf('scuff', 'sand', { dusty: true })] }),
          stepOf('topcoat', 'topcoat', { material: 'paint' }),
          stepOf('look', 'inspect'),
        ],
      },
    ],
  ]),
  pieces: [piece],
  journal: [],
};

/** Deeds as entries 1, 2, 3 …, an hour apart. */
export function entriesOf(...deeds: readonly Deed[]): Entry[] {
  return deeds.map((deed, i) => ({ number: i + 1, at: 1000 + 60 * i, deed }));
}

export const idOf = (step: string): string => `box/body/${step}`;

/** `done('sand', 3)`: the third hour of the day, half an hour long. */
export function done(step: string, hour: number): Deed {
  return { kind: 'done', task: idOf(step), from: hour * 60, to: hour * 60 + 30 };
}
