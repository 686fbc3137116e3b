import { componentOrders, construct } from '../../src/engine/construct.ts';
import { keep, noneYet } from '../../src/engine/improve.ts';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import type { Problem } from '../../src/engine/problem.ts';
import { searchOf } from '../../src/engine/search.ts';

/** A search, and the plan of its first order. */
export function firstPlan(problem: Problem) {
  const net = netOf(problem);
  const labels = new Labels(net);
  labels.propagate();
  const search = searchOf(net, labels, 1);
  const incumbent = noneYet(net.count, search.costs.bound);
  const [order = []] = componentOrders(search);
  construct(search, order);
  keep(search, { seed: 1, steps: 0 }, incumbent);
  return { search, incumbent };
}
