import { int } from '../../typed.ts';
import type { Arcs } from './model.ts';

/** No path from one activity to another. */
export const NO_PATH = -1_000_000_000;

/** Arcs of a cycle whose weights add up to more than nothing, so that no schedule can satisfy all of them. */
export function positiveCycle(activities: number, arcs: Arcs): number[] | undefined {
  const start = new Int32Array(activities);
  const by = new Int32Array(activities).fill(-1);
  let last = -1;
  for (let round = 0; round <= activities; round++) {
    last = -1;
    for (let k = 0; k < arcs.from.length; k++) {
      const reached = int(start, int(arcs.from, k)) + int(arcs.weight, k);
      if (reached <= int(start, int(arcs.to, k))) continue;
      last = int(arcs.to, k);
      start[last] = reached;
      by[last] = k;
    }
    if (last < 0) return undefined;
  }
  for (let i = 0; i < activities; i++) last = int(arcs.from, int(by, last));
  const cycle: number[] = [];
  let node = last;
  do {
    const k = int(by, node);
    cycle.push(k);
    node = int(arcs.from, k);
  } while (node !== last);
  return cycle.reverse();
}

/** Longest paths between all pairs, `n × n`, row by row. There must be no positive cycle. */
export function longestPaths(n: number, arcs: Arcs): Int32Array {
  const far = new Int32Array(n * n).fill(NO_PATH);
  for (let i = 0; i < n; i++) far[i * n + i] = 0;
  for (let k = 0; k < arcs.from.length; k++) {
    const cell = int(arcs.from, k) * n + int(arcs.to, k);
    far[cell] = Math.max(int(far, cell), int(arcs.weight, k));
  }
  for (let k = 0; k < n; k++)
    for (let i = 0; i < n; i++) {
      const first = int(far, i * n + k);
      if (first > NO_PATH) lengthenRow(far, n, i, k, first);
    }
  return far;
}

/** Row `i` over the step to `k`, which is `first` away. */
function lengthenRow(far: Int32Array, n: number, i: number, k: number, first: number): void {
  const row = i * n;
  const via = k * n;
  for (let j = 0; j < n; j++) {
    const second = int(far, via + j);
    if (second > NO_PATH && first + second > int(far, row + j)) far[row + j] = first + second;
  }
}

/** Adds one arc to longest paths; false if it closes a positive cycle. */
export function addArc(far: Int32Array, n: number, from: number, to: number, weight: number): boolean {
  if (int(far, to * n + from) + weight > 0) return false;
  if (int(far, from * n + to) >= weight) return true;
  for (let i = 0; i < n; i++) {
    const first = int(far, i * n + from);
    if (first > NO_PATH && first + weight > int(far, i * n + to)) lengthenRow(far, n, i, to, first + weight);
  }
  return true;
}
