import { at } from '../at.ts';
import type { Structure } from './structure.ts';
import { int, real } from '../typed.ts';

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
  const inList = new Set(list);
  const waiting = new Map<number, number>();
  for (const i of list)
    for (const j of at(structure.after, i)) if (inList.has(j)) waiting.set(j, (waiting.get(j) ?? 0) + 1);
  const ready = list.filter((i) => !waiting.has(i));
  const order: number[] = [];
  let block = -1;
  while (ready.length > 0) {
    const k = bestOf(structure, ready, key, wholeBlocks ? block : -1);
    const i = at(ready, k);
    ready[k] = at(ready, ready.length - 1);
    ready.pop();
    order.push(i);
    block = int(structure.blockOf, i);
    for (const j of at(structure.after, i)) {
      const left = waiting.get(j);
      if (left === undefined) continue;
      waiting.set(j, left - 1);
      if (left === 1) ready.push(j);
    }
  }
  return order;
}

function bestOf(structure: Structure, ready: readonly number[], key: Float64Array, block: number): number {
  let best = 0;
  for (let k = 1; k < ready.length; k++) {
    const i = at(ready, k);
    const other = at(ready, best);
    const better = int(structure.blockOf, i) === block ? 1 : 0;
    const worse = int(structure.blockOf, other) === block ? 1 : 0;
    if (better !== worse) {
      if (better > worse) best = k;
      continue;
    }
    const gain = real(key, other) - real(key, i);
    if (gain > 0 || (gain === 0 && before(structure, i, other))) best = k;
  }
  return best;
}

/** Ties go by component, then by rank, then by index. */
function before(structure: Structure, i: number, j: number): boolean {
  const byComponent = int(structure.componentOf, i) - int(structure.componentOf, j);
  const byRank = int(structure.rank, i) - int(structure.rank, j);
  return byComponent !== 0 ? byComponent < 0 : byRank !== 0 ? byRank < 0 : i < j;
}
