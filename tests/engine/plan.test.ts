import { expect, it } from 'vitest';
import { componentOrders, construct } from '../../src/engine/construct.ts';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import type { Plan } from '../../src/engine/plan.ts';
import { randomFrom } from '../../src/engine/random.ts';
import { removeAll, searchOf } from '../../src/engine/search.ts';
import { shopLike } from './shop-like.ts';

/** All that a plan answers: its places, what it costs, and how much is in use at every quarter of an hour. */
function answersOf({ net, starts, ends, modes, until, value, guide, inUse, present }: Plan) {
  const profiles = [...inUse, ...present.flat()];
  const levels: number[][] = profiles.map(() => []);
  for (let t = net.problem.from; t < net.problem.to; t += 15)
    profiles.forEach((profile, k) => {
      let level = 0;
      while (profile.freeFrom(t, t + 1, level) !== t) level += 1;
      levels[k]?.push(level);
    });
  return { starts: [...starts], ends: [...ends], modes: [...modes], until: [...until], value, guide, levels };
}

it.each([1, 2, 3])('becomes what it was, whatever was taken out and placed meanwhile (shop %i)', (seed) => {
  const net = netOf(shopLike(4, seed));
  const labels = new Labels(net);
  labels.propagate();
  const search = searchOf(net, labels, 1);
  const [first = [], second = []] = componentOrders(search);
  expect(construct(search, first)).toBe(-1);
  const { plan } = search;
  const kept = plan.twin();
  const before = answersOf(plan);
  expect(answersOf(kept)).toEqual(before);

  const random = randomFrom(seed);
  const some = [...plan.starts.keys()].filter(() => random.below(2) === 0);
  removeAll(search, some);
  expect(answersOf(plan)).not.toEqual(before);
  plan.become(kept);
  expect(answersOf(plan)).toEqual(before);

  construct(search, second.toReversed());
  plan.become(kept);
  expect(answersOf(plan)).toEqual(before);
  expect(answersOf(kept)).toEqual(before);
});
