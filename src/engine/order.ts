import { at } from '../at.ts';
import type { Structure } from './structure.ts';
import { int, real } from '../typed.ts';

/** Of an activity that is not to be ordered. */
const notInList = -1;

/**
 * Orders activities for placing: each after those of the list that must come before it, smallest `key` first, and a
 * block once begun is finished first if `wholeBlocks`.
 */
export function placingOrder(
  structure: Structure,
  list: readonly number[],
  key: Float64Array,
  wholeBlocks: boolean,
): number[] {
  const waiting = new Int32Array(key.length).fill(notInList);
  for (const i of list) waiting[i] = 0;
  for (const i of list)
    for (const j of at(structure.after, i)) if (int(waiting, j) !== notInList) waiting[j] = int(waiting, j) + 1;
  const ready = list.filter((i) => waiting[i] === 0);
  const order: number[] = [];
  let block = -1;
  while (ready.length > 0) {
    const k = (wholeBlocks ? ofBlock(structure, ready, key, block) : undefined) ?? bestOf(structure, ready, key);
    const i = at(ready, k);
    ready[k] = at(ready, ready.length - 1);
    ready.pop();
    order.push(i);
    block = int(structure.blockOf, i);
    for (const j of at(structure.after, i)) {
      const left = int(waiting, j);
      if (left === notInList) continue;
      waiting[j] = left - 1;
      if (left === 1) ready.push(j);
    }
  }
  return order;
}

/** Where in `ready` the best of block `block` is, if one is ready. */
function ofBlock(structure: Structure, ready: readonly number[], key: Float64Array, block: number): number | undefined {
  const own = ready.filter((i) => int(structure.blockOf, i) === block);
  return own.length === 0 ? undefined : ready.indexOf(at(own, bestOf(structure, own, key)));
}

/** Where in `ready` the one with the smallest key is. */
function bestOf(structure: Structure, ready: readonly number[], key: Float64Array): number {
  let best = 0;
  let least = real(key, at(ready, 0));
  for (let k = 1; k < ready.length; k++) {
    const gain = least - real(key, at(ready, k));
    if (gain > 0 || (gain === 0 && before(structure, at(ready, k), at(ready, best)))) {
      best = k;
      least = real(key, at(ready, k));
    }
  }
  return best;
}

/** Ties go by component, then by rank, then by index. */
function before(structure: Structure, i: number, j: number): boolean {
  const byComponent = int(structure.componentOf, i) - int(structure.componentOf, j);
  const byRank = int(structure.rank, i) - int(structure.rank, j);
  return byComponent !== 0 ? byComponent < 0 : byRank !== 0 ? byRank < 0 : i < j;
}
