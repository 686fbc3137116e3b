import { describe, expect, it } from 'vitest';
import { defaultSteps } from '../../src/engine/default-steps.ts';
import type { Outcome, Problem } from '../../src/engine/problem.ts';
import { solve } from '../../src/engine/solve.ts';
import { violations } from '../../src/engine/valid.ts';
import { shopLike } from './shop-like.ts';

type Found = Extract<Outcome, { status: 'optimal' | 'feasible' }>;

function found(outcome: Outcome): Found {
  if (!('schedule' in outcome)) throw new Error(`no schedule: ${outcome.status}`);
  return outcome;
}

function usual(problem: Problem): Found {
  return found(solve(problem, { seed: 1, steps: defaultSteps(problem) }));
}

/** Searches on until it has asked so often whether to stop: the same, however fast the machine. */
function long(problem: Problem, asked: number): Found {
  let left = asked;
  return found(solve(problem, { seed: 1, steps: defaultSteps(problem), goOn: true, stop: () => --left < 0 }));
}

describe('a search that goes on', () => {
  const shop = shopLike(4, 2);

  it('finds a cheaper plan than that of the usual length, and the same each time', () => {
    const one = long(shop, 1500);
    expect(one.value).toBeLessThan(usual(shop).value);
    expect(one.bound).toBeLessThanOrEqual(one.value);
    expect(violations(shop, one.schedule)).toEqual([]);
    expect(long(shop, 1500)).toEqual(one);
  });

  it('goes on from a plan, and never to a dearer one', () => {
    const begun = usual(shop);
    let left = 1500;
    const options = { seed: 2, steps: defaultSteps(shop), from: begun.schedule, goOn: true, stop: () => --left < 0 };
    expect(found(solve(shop, options)).value).toBeLessThanOrEqual(begun.value);
  });

  it('gets on between one question whether to stop and the next', () => {
    // Prices are fine here, but days are too few activities to be settled.
    const small = shopLike(8, 8);
    expect(long(small, 6000).steps).toBeGreaterThan(2 * long(small, 2000).steps);
  });

  it('ends by itself where the plan is proven best', () => {
    const one = shopLike(1, 7);
    const answer = found(solve(one, { seed: 1, steps: defaultSteps(one), goOn: true, stop: () => false }));
    expect(answer.status).toBe('optimal');
  });

  it('ends where nobody could stop it', () => {
    const few = shopLike(3, 7);
    const options = { seed: 1, steps: defaultSteps(few) };
    expect(found(solve(few, { ...options, goOn: true })).value).toBe(found(solve(few, options)).value);
  });
});
