/** A size to choose from, in whole grains; `minor`: what one costs. */
export interface Size {
  readonly grains: number;
  readonly minor?: number;
}

export interface Chosen<S extends Size> {
  readonly size: S;
  readonly count: number;
}

/** Beyond so many grains whole containers of the best size are taken first, so that the rest stays quick to try out. */
const MOST_TRIED = 20_000;

/** Where nothing says what containers cost: so much of the need may be to spare, to have fewer of them. */
const SPARE_SHARE = 0.2;

/** The best way to fill containers with exactly so many grains; `last` is the size that was added last. */
interface Filled {
  readonly cost: number;
  readonly count: number;
  readonly last: number;
}

function isBetter(a: Filled, b: Filled | undefined): boolean {
  return b === undefined || a.cost < b.cost || (a.cost === b.cost && a.count < b.count);
}

/** For each number of grains up to `most` that whole containers can hold exactly: the best way. */
function fillings(sizes: readonly Size[], most: number): (Filled | undefined)[] {
  const filled: (Filled | undefined)[] = [{ cost: 0, count: 0, last: -1 }];
  for (let total = 1; total <= most; total += 1) {
    let best: Filled | undefined;
    for (const [last, { grains, minor = 0 }] of sizes.entries()) {
      const before = total < grains ? undefined : filled[total - grains];
      if (before === undefined) continue;
      const longer = { cost: before.cost + minor, count: before.count + 1, last };
      if (isBetter(longer, best)) best = longer;
    }
    filled[total] = best;
  }
  return filled;
}

/** The size that most is bought in: the one with the lowest price for what it holds, or the largest. */
function bulkSize<S extends Size>(sizes: readonly S[]): S | undefined {
  const perGrain = ({ minor = 0 }: S, { grains }: S) => minor * grains;
  return sizes.toSorted((a, b) => perGrain(a, b) - perGrain(b, a) || b.grains - a.grains)[0];
}

/**
 * Containers that hold at least `need` grains. Where each size has a price: the cheapest, and of those the fewest. Else
 * the fewest that leave less to spare than the smallest of them holds, or than a fifth of the need; of those the ones with
 * the least to spare. Exact up to 20 000 grains (20 litres, 200 metres); what is needed beyond is taken in bulk.
 */
export function chooseContainers<S extends Size>(need: number, sizes: readonly S[]): Chosen<S>[] {
  const bulk = bulkSize(sizes);
  if (bulk === undefined || need <= 0) return [];
  const inBulk = Math.max(0, Math.floor((need - MOST_TRIED) / bulk.grains));
  const rest = need - inBulk * bulk.grains;
  const priced = sizes.every((s) => s.minor !== undefined);
  const grains = sizes.map((s) => s.grains);
  const most = priced
    ? rest + Math.max(...grains) - 1
    : rest + Math.max(Math.min(...grains) - 1, Math.floor(need * SPARE_SHARE));
  const filled = fillings(priced ? sizes : grains.map((g) => ({ grains: g })), most);

  let total = -1;
  for (let t = rest; t <= most; t += 1) {
    const way = filled[t];
    if (way !== undefined && isBetter(way, filled[total])) total = t;
  }
  const counts = sizes.map((s) => (s === bulk ? inBulk : 0));
  for (let way = filled[total]; way !== undefined && way.last >= 0; way = filled[total]) {
    counts[way.last] = (counts[way.last] ?? 0) + 1;
    total -= grains[way.last] ?? 0;
  }
  return sizes.map((size, i) => ({ size, count: counts[i] ?? 0 })).filter((c) => c.count > 0);
}
