import { describe, expect, it, vi } from 'vitest';
import { defaultSteps } from '../../src/engine/default-steps.ts';
import { solveGeneral } from '../../src/engine/general.ts';
import type { PriceOptions } from '../../src/engine/prices/price-bound.ts';
import { shopLike } from './shop-like.ts';

// Laying out a bound by prices takes seconds where a long search left much work for it: how much is asked of it, is heard here.

const asked = vi.hoisted((): PriceOptions[] => []);
vi.mock('../../src/engine/prices/price-bound.ts', async (original) => {
  const real = await original<typeof import('../../src/engine/prices/price-bound.ts')>();
  const priceBound: typeof real.priceBound = (net, labels, structure, known, horizon, options) => {
    asked.push(options);
    return real.priceBound(net, labels, structure, known, horizon, options);
  };
  return { ...real, priceBound };
});

/** The work that went into the bound of a search that stops where `stop` says so. */
function workOf(steps: number, stop: () => boolean): readonly number[] {
  asked.length = 0;
  solveGeneral(shopLike(6, 8), { seed: 1, steps, stop });
  return asked.map(({ work }) => work);
}

describe('a search that is asked for an end', () => {
  const usual = defaultSteps(shopLike(6, 8));

  it('puts no more work into its bound than a search of the usual length', () => {
    const [work = NaN] = workOf(usual, () => true);
    expect(work).toBeGreaterThan(0);
    expect(workOf(100 * usual, () => true)).toEqual([work]);
  });

  it('and as much as ever where nobody asks', () => {
    const [work = NaN] = workOf(100, () => false);
    const [more = NaN] = workOf(200, () => false);
    expect(more).toBe(2 * work);
  });
});
