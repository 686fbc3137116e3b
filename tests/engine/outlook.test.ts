import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { gridOf, openMinutes } from '../../src/engine/prices/grid.ts';
import { marketOf } from '../../src/engine/prices/market.ts';
import { costFrom, lookFrom, type Outlook, outlookOf, reprice } from '../../src/engine/prices/outlook.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import { solve } from '../../src/engine/solve.ts';
import { bruteForce } from './brute-force.ts';
import { numbered } from './numbered.ts';
import { recoatProblems } from './recoat-problems.ts';
import { shopLike } from './shop-like.ts';
import { smallProblems } from './small-problems.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** An outlook without prices, and the schedule as it asks for it. */
function outlookOn(problem: Problem, schedule: Schedule, bucketMinutes?: number) {
  const { net, labels, structure, settled } = numbered(problem, schedule);
  const open = openMinutes(net, problem.from, problem.to);
  const market = marketOf(net, gridOf(open, problem.from, problem.to, 1), open.needed);
  return { outlook: outlookOf(net, labels, structure, market, bucketMinutes), settled };
}

/** Any prices, by turns from `list`. */
function priceAll({ market }: Outlook, list: readonly number[]): void {
  let k = 0;
  for (const prices of market.prices) for (let b = 0; b < prices.length; b++) prices[b] = list[k++ % list.length] ?? 0;
}

const settings = fc.record({
  since: fc.integer({ min: 0, max: 9 }),
  days: fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })),
  prices: fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 12 }),
  bucketMinutes: fc.integer({ min: 1, max: 3 }),
});

describe.each([
  ['any small problem', smallProblems({ activities: 4, minutes: 7 })],
  ['one coat over another', recoatProblems()],
] as const)('what a beginning leaves to be paid, in %s', (_, problems) => {
  it('is never more than the best plan costs that begins so, whatever the prices', () => {
    fc.assert(
      fc.property(problems, settings, (problem, { since, days, prices, bucketMinutes }) => {
        const truth = bruteForce(problem);
        if (truth === undefined) return;
        const { outlook, settled } = outlookOn(problem, truth.schedule, bucketMinutes);
        priceAll(outlook, prices);
        const from = problem.from + since;
        lookFrom(outlook, from, [from + days[0], from + days[1]]);
        expect(costFrom(outlook, settled)).toBeLessThanOrEqual(truth.value + 1e-6);
      }),
      { numRuns: long ? 10_000 : 300, seed: 20270115 },
    );
  });

  it('nor is it at prices found for what is left', () => {
    fc.assert(
      fc.property(problems, settings, (problem, { since, days, bucketMinutes }) => {
        const truth = bruteForce(problem);
        if (truth === undefined) return;
        const { outlook, settled } = outlookOn(problem, truth.schedule, bucketMinutes);
        const from = problem.from + since;
        reprice(outlook, settled, from, { target: truth.value + 1, rounds: 6, most: 2, stop: undefined });
        lookFrom(outlook, from, [from + days[0], from + days[1]]);
        expect(costFrom(outlook, settled)).toBeLessThanOrEqual(truth.value + 1e-6);
      }),
      { numRuns: long ? 5_000 : 150, seed: 20270115 },
    );
  });
});

describe('the outlook on a shop', () => {
  const problem = shopLike(6, 8);
  const plan = solve(problem, { seed: 1, steps: 2000 });
  if (!('schedule' in plan)) throw new Error('the shop must have a plan');
  const { outlook, settled } = outlookOn(problem, plan.schedule);
  const weights = problem.objective.reduce((sum, term) => sum + ('weight' in term ? term.weight : 0), 0);

  it('sees the whole cost once all is settled, to the length of a bucket', () => {
    lookFrom(outlook, problem.from, [problem.to, problem.to]);
    expect(costFrom(outlook, settled)).toBeLessThanOrEqual(plan.value + 1e-6);
    expect(costFrom(outlook, settled)).toBeGreaterThan(plan.value - 60 * weights);
  });

  it('sees more with prices than without, while all is open', () => {
    const { from } = problem;
    lookFrom(outlook, from, [from, from]);
    const without = costFrom(outlook, settled);
    const asked = { target: plan.value, rounds: 30, most: 4, stop: undefined };
    const orders = reprice(outlook, settled, from, asked);
    lookFrom(outlook, from, [from, from]);
    expect(orders).toHaveLength(4);
    expect(costFrom(outlook, settled)).toBeGreaterThan(without);
    expect(costFrom(outlook, settled)).toBeLessThanOrEqual(plan.value + 1e-6);
  });
});
