import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import type { PartSlot } from '../../src/model/piece.ts';
import type { Recipe } from '../../src/model/recipe.ts';
import { partSteps, slotParts, slotProblems } from '../../src/model/slot-parts.ts';
import { step } from './steps.ts';

function part(id: string, steps: Recipe['steps']): Recipe {
  return { id, name: id, about: '', steps };
}

const host = [step('wash', 'clean'), step('sand', 'sand'), step('prime', 'prime', { after: [{ step: 'sand' }] })];
const fill = part('fill', [step('putty', 'fill'), step('level', 'sand', { after: [{ step: 'putty', waitHours: 2 }] })]);
const glue = part('glue', [step('clamp', 'repair')]);
const parts = new Map([fill, glue].map((p) => [p.id, p]));
const ids = (slots: readonly PartSlot[]) => slotParts(host, slots, parts).map((s) => s.id);

describe('a part', () => {
  it('goes before or after the step that is named, else at the beginning', () => {
    expect(ids([{ part: 'fill', before: 'sand' }])).toEqual(['wash', 'fill-putty', 'fill-level', 'sand', 'prime']);
    expect(ids([{ part: 'fill', after: 'prime' }])).toEqual(['wash', 'sand', 'prime', 'fill-putty', 'fill-level']);
    expect(ids([{ part: 'glue' }])).toEqual(['glue-clamp', 'wash', 'sand', 'prime']);
  });

  it('stands nearer to its step the later it is in the list', () => {
    const two = (where: 'before' | 'after') =>
      ids([
        { part: 'glue', [where]: 'sand' },
        { part: 'fill', [where]: 'sand' },
      ]);
    expect(two('before')).toEqual(['wash', 'glue-clamp', 'fill-putty', 'fill-level', 'sand', 'prime']);
    expect(two('after')).toEqual(['wash', 'sand', 'fill-putty', 'fill-level', 'glue-clamp', 'prime']);
  });

  it('keeps its own references under their new names', () => {
    expect(partSteps(fill).map((s) => s.after)).toEqual([undefined, [{ step: 'fill-putty', waitHours: 2 }]]);
  });

  it('is awaited by a next step that names what it comes after', () => {
    const slotted = slotParts(host, [{ part: 'fill', before: 'prime' }], parts);
    expect(slotted.find((s) => s.id === 'prime')?.after).toEqual([{ step: 'sand' }, { step: 'fill-level' }]);
  });

  it('leaves the recipe as it was, but for what came in', () => {
    const place = fc.constantFrom<Partial<PartSlot>>({}, ...host.flatMap((s) => [{ before: s.id }, { after: s.id }]));
    const slots = fc
      .uniqueArray(fc.constantFrom('fill', 'glue'))
      .chain((names) => fc.tuple(...names.map((name) => place.map((p): PartSlot => ({ part: name, ...p })))));
    fc.assert(
      fc.property(slots, (list: readonly PartSlot[]) => {
        expect(slotProblems(host, list, parts)).toEqual([]);
        const slotted = ids(list);
        expect(new Set(slotted).size).toBe(slotted.length);
        expect(slotted.filter((id) => host.some((s) => s.id === id))).toEqual(host.map((s) => s.id));
        for (const { part: name } of list) {
          const own = partSteps(parts.get(name) ?? fill).map((s) => s.id);
          const first = slotted.indexOf(own[0] ?? '');
          expect(slotted.slice(first, first + own.length)).toEqual(own);
        }
      }),
    );
  });
});

describe('a list of parts that does not fit', () => {
  it('is named word by word', () => {
    const list = [{ part: 'fill', before: 'prima' }, { part: 'glew' }, { part: 'fill', before: 'sand', after: 'wash' }];
    expect(slotProblems(host, list, parts)).toEqual([
      { slot: 0, code: 'unknown-step', word: 'prima' },
      { slot: 1, code: 'unknown-part', word: 'glew' },
      { slot: 2, code: 'part-twice', word: 'fill' },
      { slot: 2, code: 'before-and-after', word: 'fill' },
    ]);
  });
});
