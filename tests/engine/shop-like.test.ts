import { describe, expect, it } from 'vitest';
import { defaultSteps } from '../../src/engine/default-steps.ts';
import { solve } from '../../src/engine/solve.ts';
import { violations } from '../../src/engine/valid.ts';
import { shopLike } from './shop-like.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

describe('problems like those of a shop', () => {
  it.each(long ? [8, 30, 100, 300, 1000] : [2, 8, 30])('with %i pieces get a valid plan', (pieces) => {
    const problem = shopLike(pieces, 7);
    const outcome = solve(problem, { seed: 1, steps: long ? defaultSteps(problem) : 2000 });
    if (!('schedule' in outcome)) throw new Error(`no plan: ${outcome.status}`);
    expect(violations(problem, outcome.schedule)).toEqual([]);
    expect(outcome.bound).toBeLessThanOrEqual(outcome.value);
    const bounds = outcome.terms.reduce((sum, term) => sum + term.bound, 0);
    expect(bounds).toBeLessThanOrEqual(outcome.bound);
    for (const term of outcome.terms) expect(term.bound).toBeLessThanOrEqual(term.value);
  });

  it('ask no more of the hands than they have, where pieces come as the shop gets through them', () => {
    const { activities, objective, from } = shopLike(30, 7, 'as the shop gets through them');
    const arrivals = objective.flatMap((term) =>
      term.kind === 'late' && term.name.startsWith('tie-up') ? [term.due] : [],
    );
    expect(arrivals).toHaveLength(30);
    expect(arrivals.toSorted((a, b) => a - b)).toEqual(arrivals);
    expect(new Set(arrivals).size).toBeGreaterThan(5);
    expect(arrivals[0]).toBe(from);
    const begins = activities.filter(({ name }) => name.endsWith('dismantle'));
    begins.forEach(({ modes }, k) => {
      for (const { starts } of modes) expect(starts?.[0]?.start).toBeGreaterThanOrEqual(arrivals[k] ?? Infinity);
    });
  });

  it('get a valid plan where pieces come as the shop gets through them', () => {
    const problem = shopLike(12, 7, 'as the shop gets through them');
    const outcome = solve(problem, { seed: 1, steps: 1000 });
    if (!('schedule' in outcome)) throw new Error(`no plan: ${outcome.status}`);
    expect(violations(problem, outcome.schedule)).toEqual([]);
    expect(outcome.bound).toBeLessThanOrEqual(outcome.value);
  });

  it('get the same plan for the same seed, a better one for a longer search', () => {
    const problem = shopLike(8, 3);
    const one = solve(problem, { seed: 5, steps: 8000 });
    expect(solve(shopLike(8, 3), { seed: 5, steps: 8000 })).toEqual(one);
    const first = solve(problem, { seed: 5, steps: 1 });
    if (!('value' in one) || !('value' in first)) throw new Error('no plan');
    expect(one.value).toBeLessThan(first.value);
  });

  it('get plans near the one they follow already', () => {
    const problem = shopLike(8, 3);
    const before = solve(problem, { seed: 5, steps: 2000 });
    if (!('schedule' in before)) throw new Error('no plan');
    const again = solve(problem, { seed: 6, steps: 1, from: before.schedule });
    if (!('value' in again)) throw new Error('no plan');
    expect(again.value).toBeLessThanOrEqual(before.value);
  });
});
