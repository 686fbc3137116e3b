import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { chooseContainers, type Size } from '../../src/bookkeeping/containers.ts';

interface Bought {
  readonly holds: number;
  readonly cost: number;
  readonly count: number;
}

/** Every set of containers that holds at least `need` and would not if any one were left out. */
function allSets(need: number, sizes: readonly Size[]): Bought[] {
  const [first, ...others] = sizes;
  if (first === undefined) return need <= 0 ? [{ holds: 0, cost: 0, count: 0 }] : [];
  return Array.from({ length: Math.max(0, Math.ceil(need / first.grains)) + 1 }, (_, count) =>
    allSets(need - count * first.grains, others).map((rest) => ({
      holds: rest.holds + count * first.grains,
      cost: rest.cost + count * (first.minor ?? 0),
      count: rest.count + count,
    })),
  ).flat();
}

function bought(need: number, sizes: readonly Size[]): Bought {
  return chooseContainers(need, sizes).reduce(
    (sum, { size, count }) => ({
      holds: sum.holds + size.grains * count,
      cost: sum.cost + (size.minor ?? 0) * count,
      count: sum.count + count,
    }),
    { holds: 0, cost: 0, count: 0 },
  );
}

const anySizes = fc.uniqueArray(fc.integer({ min: 2, max: 30 }), { minLength: 1, maxLength: 4 });
const anyNeed = fc.integer({ min: 1, max: 120 });

test('with prices nothing cheaper holds enough, and nothing as cheap is fewer containers', () => {
  const anyPriced = anySizes.chain((grains) =>
    fc.tuple(...grains.map((g) => fc.integer({ min: 0, max: 40 }).map((minor) => ({ grains: g, minor })))),
  );
  fc.assert(
    fc.property(anyNeed, anyPriced, (need, sizes) => {
      const mine = bought(need, sizes);
      expect(mine.holds).toBeGreaterThanOrEqual(need);
      const cheapest = Math.min(...allSets(need, sizes).map((b) => b.cost));
      expect(mine.cost).toBe(cheapest);
      const fewest = Math.min(...allSets(need, sizes).flatMap((b) => (b.cost === cheapest ? [b.count] : [])));
      expect(mine.count).toBe(fewest);
    }),
  );
});

test('without prices: the fewest that waste neither a smallest container nor a fifth of the need, and then the least', () => {
  fc.assert(
    fc.property(anyNeed, anySizes, (need, grains) => {
      const sizes = grains.map((g) => ({ grains: g }));
      const mine = bought(need, sizes);
      expect(mine.holds).toBeGreaterThanOrEqual(need);
      const mayWaste = (b: Bought) => b.holds - need < Math.min(...grains) || b.holds - need <= need / 5;
      expect(mayWaste(mine)).toBe(true);
      const fair = allSets(need, sizes).filter(mayWaste);
      const fewest = Math.min(...fair.map((b) => b.count));
      expect(mine.count).toBe(fewest);
      expect(mine.holds).toBe(Math.min(...fair.flatMap((b) => (b.count === fewest ? [b.holds] : []))));
    }),
  );
});

test('a great need is bought in bulk, and still covered', () => {
  const sizes = [
    { grains: 500, minor: 900 },
    { grains: 5000, minor: 6000 },
  ];
  const mine = bought(1_234_567, sizes);
  expect(mine.holds).toBeGreaterThanOrEqual(1_234_567);
  expect(mine.holds).toBeLessThan(1_234_567 + 5000);
});

test('nothing is needed, or nothing is sold: nothing is bought', () => {
  expect(chooseContainers(0, [{ grains: 5 }])).toEqual([]);
  expect(chooseContainers(7, [])).toEqual([]);
});
