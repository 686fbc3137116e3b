import { describe, expect, test } from 'vitest';
import { bridges, stackProblems } from '../../src/drying/stack.ts';
import type { Family, StackRule } from '../../src/model/material.ts';
import { madeUp } from './arbitrary.ts';

const no: StackRule = { over: 'wax', verdict: 'no', why: 'nothing holds on wax' };
const after: StackRule = {
  over: 'oil',
  verdict: 'after',
  mark: 'cure',
  barrier: 'shellac',
  why: 'oil must have cured',
};
const of = (id: string, family: Family, stack: readonly StackRule[] = []) => madeUp({ id, family, stack });
const wax = of('wax', 'wax');
const oil = of('oil', 'oil');
const shellac = of('shellac', 'shellac');
const enamel = of('enamel', 'water-borne', [no, after]);

describe('films one on the other', () => {
  test('that go together, alone, or not at all there', () => {
    expect(stackProblems([])).toEqual([]);
    expect(stackProblems([enamel])).toEqual([]);
    expect(stackProblems([shellac, enamel])).toEqual([]);
    expect(stackProblems([enamel, oil])).toEqual([]);
  });
  test('that do not, or only after a mark', () => {
    expect(stackProblems([wax, enamel])).toStrictEqual([
      { lower: 'wax', upper: 'enamel', verdict: 'no', why: 'nothing holds on wax' },
    ]);
    expect(stackProblems([shellac, oil, enamel])).toStrictEqual([
      { lower: 'oil', upper: 'enamel', verdict: 'after', mark: 'cure', barrier: 'shellac', why: 'oil must have cured' },
    ]);
  });
  test('with a barrier between they are no neighbours', () => {
    expect(stackProblems([oil, shellac, enamel])).toEqual([]);
  });
  test.each<Family>(['cleaner', 'tape', 'filler', 'glue'])('a %s between them does not part them', (family) => {
    expect(stackProblems([oil, of('x', family), enamel])).toHaveLength(1);
    expect(stackProblems([of('x', family, [{ ...no, over: 'oil' }]), enamel])).toEqual([]);
  });
});

test('a barrier bridges two films where neither of its neighbours refuses', () => {
  expect(bridges(oil, shellac, enamel)).toBe(true);
  expect(bridges(wax, of('s', 'shellac', [no]), enamel)).toBe(false);
  expect(bridges(oil, wax, enamel)).toBe(false);
  // What waits for a mark is not refused.
  expect(bridges(shellac, oil, enamel)).toBe(true);
});
