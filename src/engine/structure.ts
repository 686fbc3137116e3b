import { at } from '../at.ts';
import type { Labels } from './labels.ts';
import type { Net } from './net.ts';
import { holdKinds } from './net.ts';
import { int } from '../typed.ts';

/** How the activities hang together. Components touch one another only through resources and exclusions. */
export interface Structure {
  /** Activities of each component, in an order that respects their lags as far as there is one. */
  readonly components: readonly Int32Array[];
  /** By activity: its component. */
  readonly componentOf: Int32Array;
  /** By activity: its block: those that maximum lags or holds tie to one another and that must be placed together. */
  readonly blockOf: Int32Array;
  /** By activity: its place in its component's order. */
  readonly rank: Int32Array;
  /** By activity: those that must be placed after it, all of a later rank. */
  readonly after: readonly (readonly number[])[];
}

/** Finds components, blocks and orders; `labels` must be propagated. */
export function structureOf(net: Net, labels: Labels): Structure {
  const componentOf = componentsOf(net);
  const ties = tiesOf(net);
  const blockOf = blocksOf(net.count, ties);
  const order = orderOf(net, labels);
  const rank = new Int32Array(net.count);
  const members: number[][] = [];
  for (const i of order) {
    const component = (members[int(componentOf, i)] ??= []);
    rank[i] = component.length;
    component.push(i);
  }
  const after = precedence(net).map((list, i) => list.filter((j) => int(rank, j) > int(rank, i)));
  return { components: members.map((list) => Int32Array.from(list)), componentOf, blockOf, rank, after };
}

/** Numbers the connected components in order of their first activity. */
function componentsOf(net: Net): Int32Array {
  const parent = Int32Array.from({ length: net.count }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (int(parent, r) !== r) r = int(parent, r);
    for (let k = i; k !== r;) {
      const up = int(parent, k);
      parent[k] = r;
      k = up;
    }
    return r;
  };
  const join = (i: number, j: number): void => {
    const a = root(i);
    const b = root(j);
    parent[Math.max(a, b)] = Math.min(a, b);
  };
  for (const lag of net.lags) {
    join(lag.from, lag.to);
    for (const condition of lag.when) join(lag.from, condition.activity);
  }
  for (const use of net.uses) if (use.next >= 0) join(use.activity, use.next);
  const numbers = new Map<number, number>();
  return Int32Array.from({ length: net.count }, (_, i) => {
    const r = root(i);
    const number = numbers.get(r) ?? numbers.size;
    numbers.set(r, number);
    return number;
  });
}

/** Arcs along which a later place of one activity moves the other later, too. */
function tiesOf(net: Net): number[][] {
  const arcs = Array.from({ length: net.count }, (): number[] => []);
  for (const lag of net.lags) {
    if (lag.least !== undefined) at(arcs, lag.from).push(lag.to);
    if (lag.most !== undefined) at(arcs, lag.to).push(lag.from);
    if (lag.most !== undefined)
      for (const condition of lag.when) {
        at(arcs, lag.from).push(condition.activity);
        at(arcs, condition.activity).push(lag.to);
      }
  }
  for (const use of net.uses) {
    if (use.next < 0) continue;
    at(arcs, use.activity).push(use.next);
    if (use.kind === holdKinds.next) at(arcs, use.next).push(use.activity);
  }
  return arcs;
}

/** Strongly connected components, without recursion: by activity the number of its own. */
function blocksOf(count: number, arcs: readonly (readonly number[])[]): Int32Array {
  const block = new Int32Array(count).fill(-1);
  const index = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const nextArc = new Int32Array(count);
  const open: number[] = [];
  let visited = 0;
  let blocks = 0;
  for (let root = 0; root < count; root++) {
    if (int(index, root) >= 0) continue;
    const path = [root];
    while (path.length > 0) {
      const i = at(path, path.length - 1);
      if (int(index, i) < 0) {
        index[i] = low[i] = visited;
        visited += 1;
        open.push(i);
      }
      const j = at(arcs, i)[int(nextArc, i)];
      if (j !== undefined) {
        nextArc[i] = int(nextArc, i) + 1;
        if (int(index, j) < 0) path.push(j);
        else if (int(block, j) < 0) low[i] = Math.min(int(low, i), int(index, j));
        continue;
      }
      path.pop();
      const above = path.at(-1);
      if (above !== undefined) low[above] = Math.min(int(low, above), int(low, i));
      if (int(low, i) !== int(index, i)) continue;
      for (;;) {
        const k = open.pop();
        if (k === undefined) break;
        block[k] = blocks;
        if (k === i) break;
      }
      blocks += 1;
    }
  }
  return block;
}

/** By activity: those that should be placed after it. May hold cycles. */
function precedence(net: Net): number[][] {
  const arcs = Array.from({ length: net.count }, (): number[] => []);
  const add = (i: number, j: number): void => {
    if (i !== j) at(arcs, i).push(j);
  };
  for (const lag of net.lags) {
    const earlier = lag.least === undefined && lag.most !== undefined && (lag.most.shift ?? 0) < 0 ? lag.to : lag.from;
    const later = earlier === lag.from ? lag.to : lag.from;
    add(earlier, later);
    for (const { activity } of lag.when) {
      if (activity === earlier || activity === later) continue;
      add(earlier, activity);
      add(activity, later);
    }
  }
  for (const use of net.uses) if (use.next >= 0) add(use.activity, use.next);
  return arcs.map((list) => [...new Set(list)]);
}

/** Every activity after those before it where there is no cycle; else, and among equals, by earliest start. */
function orderOf(net: Net, labels: Labels): number[] {
  const arcs = precedence(net);
  const waiting = new Int32Array(net.count);
  for (const list of arcs) for (const j of list) waiting[j] = int(waiting, j) + 1;
  const byStart = Array.from({ length: net.count }, (_, i) => i).sort(
    (i, j) => labels.earliestStart(i) - labels.earliestStart(j) || i - j,
  );
  const placed = new Uint8Array(net.count);
  const order: number[] = [];
  for (const root of byStart) {
    // Where all that is left waits in a cycle, the earliest breaks it.
    const ready = placed[root] === 0 && int(waiting, root) <= 0 ? [root] : [];
    take(ready);
  }
  for (const root of byStart) if (placed[root] === 0) take([root]);
  return order;

  function take(ready: number[]): void {
    for (let i = ready.pop(); i !== undefined; i = ready.pop()) {
      if (placed[i] === 1) continue;
      placed[i] = 1;
      order.push(i);
      for (const j of arcs[i] ?? []) {
        waiting[j] = int(waiting, j) - 1;
        if (int(waiting, j) === 0) ready.push(j);
      }
    }
  }
}
