// Parts slotted into recipes, and what the trade would not do with a section. Common practice, no source.
import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import { expandPiece } from '../../src/model/expand.ts';
import type { Mark } from '../../src/model/mark.ts';
import type { PartSlot, Piece, Section } from '../../src/model/piece.ts';
import { slotProblems } from '../../src/model/slot-parts.ts';
import { tradeOfPiece } from '../../src/model/trade-of-piece.ts';
import { demo, recipe } from './shipped.ts';

function piece(section: Partial<Section>): Piece {
  return {
    id: 'chest',
    name: 'Chest',
    kind: 'chest',
    priceMinor: 0,
    costMinor: 0,
    mayCarryLead: true,
    joins: [],
    sections: [
      {
        id: 'body',
        name: 'Body',
        recipe: 'painted-brushed',
        areaM2: 2,
        items: 1,
        thicknessMm: 19,
        materials: {},
        without: [],
        ...section,
      },
    ],
  };
}

const book = (): Book => demo();
const codes = (section: Partial<Section>) => tradeOfPiece(book(), piece(section)).map((p) => `${p.code} ${p.step}`);

// Where each part belongs: the recipe and the place in it.
const homes: readonly (readonly [string, PartSlot])[] = [
  ['painted-brushed', { part: 'reglue-joints', before: 'fill' }],
  ['clear-water-borne', { part: 'patch-veneer', before: 'fill' }],
  ['painted-brushed', { part: 'fill-gouges', before: 'sand-120' }],
  ['drawers', { part: 'replace-runners', before: 'sand-120' }],
  ['painted-brushed', { part: 'block-stains', before: 'prime' }],
  ['oil-polyurethane', { part: 'fill-grain', before: 'varnish' }],
  ['milk-paint-wax', { part: 'seal-tannin', before: 'paint' }],
  ['drawers', { part: 'seal-odour', after: 'sand-180' }],
];

describe('the shipped parts', () => {
  it('are all tried here', () => {
    expect([...(book().parts ?? [])].map(([id]) => id).sort()).toEqual(homes.map(([, slot]) => slot.part).sort());
  });

  it.each(homes)('fit into %s: %o', (into, slot) => {
    expect(slotProblems(recipe(into).steps, [slot], book().parts ?? new Map())).toEqual([]);
    const plain = expandPiece(book(), piece({ recipe: into })).filter((t) => t.onlyFor === undefined);
    const with1 = piece({ recipe: into, with: [slot] });
    const tasks = expandPiece(book(), with1).filter((t) => t.onlyFor === undefined);
    const own = tasks.filter((t) => t.step.startsWith(`${slot.part}-`));
    expect(own.length).toBeGreaterThanOrEqual(2);
    expect(tasks.filter((t) => !own.includes(t)).map((t) => t.id)).toEqual(plain.map((t) => t.id));
    expect(tradeOfPiece(book(), with1)).toEqual([]);
  });

  it('are waited for by the step that they stand before', () => {
    const tasks = expandPiece(book(), piece({ with: [{ part: 'fill-gouges', before: 'sand-120' }] }));
    const sanding = tasks.find((t) => t.step === 'sand-120');
    expect(sanding?.needs.map((n) => n.task)).toContain('chest/body/fill-gouges-level');
    const level = tasks.find((t) => t.step === 'fill-gouges-level');
    expect(level?.needs).toContainEqual({ kind: 'mark', task: 'chest/body/fill-gouges-putty', mark: 'sand' });
    expect(level?.gated).toBe(true);
  });
});

describe('a section that breaks the order of the trade', () => {
  it('by leaving out a grit', () => {
    expect(codes({ recipe: 'oil-polyurethane', without: ['sand-120', 'sand-180'] })).toEqual(['grit-jump sand-220']);
    expect(codes({ recipe: 'oil-polyurethane', without: ['sand-120'] })).toEqual([]);
  });

  it('by leaving out the raising of the grain under a water-borne coat, not under oil', () => {
    expect(codes({ recipe: 'clear-water-borne', without: ['grain-raise'] })).toEqual(['grain-not-raised clear-1']);
    expect(codes({ recipe: 'stained-oil-topcoat', without: ['grain-raise'] })).toEqual([]);
    expect(
      codes({
        recipe: 'stained-oil-topcoat',
        without: ['grain-raise'],
        materials: { 'oil-wiping-stain': 'water-based-stain' },
      }),
    ).toEqual(['grain-not-raised stain']);
  });

  it('by waxing first and painting after', () => {
    const slot: PartSlot = { part: 'block-stains', after: 'wax' };
    expect(codes({ recipe: 'milk-paint-wax', with: [slot] })).toContain('coat-over-wax block-stains-block');
  });

  it('by regluing after the fill', () => {
    expect(codes({ with: [{ part: 'reglue-joints', after: 'fill' }] })).toEqual(['glue-after-fill reglue-joints-glue']);
  });

  it.each([
    ['stain @ touch', ['tape-too-soon mask-legs']],
    ['stain', ['tape-too-soon mask-legs']],
    ['stain @ tape', []],
    ['stain @ cure', []],
    ['sand-220', []],
  ])('by taping the legs for the body after legs/%s', (after, found) => {
    const [step = '', mark] = after.split(' @ ');
    const washstand = book().pieces.find((p) => p.id === 'pine-washstand')!;
    const joins = washstand.joins.map((join) =>
      join.id === 'mask-legs'
        ? {
            ...join,
            section: 'body',
            after: [{ step: `legs/${step}`, ...(mark !== undefined && { mark: mark as Mark }) }],
          }
        : join,
    );
    expect(tradeOfPiece(book(), { ...washstand, joins }).map((p) => `${p.code} ${p.step}`)).toEqual(found);
  });

  it('by leaving putty unsanded under the primer', () => {
    expect(codes({ without: ['sand-120', 'sand-180'] })).toEqual(['fill-not-sanded fill']);
  });
});
