import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { type Candidate, type Clash, clashOf, type Taken } from './clash.ts';
import { leastOf } from './costs.ts';
import type { Labels } from './labels.ts';
import { ownSlots } from './labels.ts';
import { MapMemo } from './map-memo.ts';
import { holdKinds, type Net, type NetLag } from './net.ts';
import type { Term } from './problem.ts';
import { int } from '../typed.ts';
import { termValue } from './value.ts';

/** Draws one branch's consequence; the branches of a node together leave out no schedule. */
type Branch = readonly NetLag[] | { readonly decide: () => void };

/** What a complete search ended with. */
export interface Completed {
  /** True: nothing cheaper than the best told exists. False: the budget ran out first. */
  readonly done: boolean;
  readonly nodes: number;
}

export interface CompleteOptions {
  /** Only schedules cheaper than this count. */
  readonly below: number;
  /** Most nodes to open. */
  readonly nodes: number;
  readonly stop?: (() => boolean) | undefined;
  /** Told of every better schedule. */
  readonly onFound: (candidate: Candidate, value: number) => void;
}

/**
 * Branch and bound over every problem that problem.ts can say. A node's candidate puts each activity at its earliest
 * in the open mode that ends first. Where it breaks a rule, the branches decide a mode that takes part, or part two of
 * those that clash; where it breaks none but is dearer than the node's bound, they decide a mode or halve a range of
 * starts. Every branch rules the candidate out or decides something, and ranges are finite, so the search ends; no
 * schedule is left out, so what it proves is proven.
 */
export function complete(labels: Labels, options: CompleteOptions): Completed {
  const { net } = labels;
  const { problem } = net;
  const zero = new MapMemo(0, problem.from, problem.to);
  const candidate: Candidate = {
    starts: new Int32Array(net.count),
    ends: new Int32Array(net.count),
    modes: new Int32Array(net.count),
  };
  let best = options.below;
  let nodes = 0;
  let spent = false;
  const isSpent = (): boolean => spent;

  const lag = (from: number, fromEnd: boolean, least: MapMemo, to: number): NetLag => ({
    index: ownSlots,
    from,
    fromEnd,
    to,
    toEnd: false,
    least,
    most: undefined,
    when: [],
  });

  const explore = (): void => {
    if (isSpent() || !labels.propagate()) return;
    nodes += 1;
    if (nodes > options.nodes || (nodes % 64 === 0 && options.stop?.() === true)) {
      spent = true;
      return;
    }
    const bound = boundOf(labels);
    if (bound >= best) return;
    const value = fill(labels, candidate);
    const clash = clashOf(net, candidate);
    if (clash === undefined && value < best) {
      best = value;
      options.onFound(candidate, value);
    }
    if (clash === undefined && value <= bound) return;
    const branches = clash === undefined ? narrowing(labels, candidate) : parting(clash);
    for (const branch of branches) {
      const mark = labels.mark();
      if ('decide' in branch) {
        branch.decide();
        explore();
      } else {
        for (const posted of branch) labels.post(posted);
        explore();
        for (const posted of [...branch].reverse()) labels.unpost(posted);
      }
      labels.undoTo(mark);
      if (isSpent() || bound >= best) return;
    }
  };

  const parting = (clash: Clash): Branch[] => {
    const undecided = clash.parties.find((i) => isUndecided(labels, i));
    if (undecided !== undefined) return modeBranches(labels, int(candidate.modes, undecided));
    if (clash.kind === 'moved') return [[lag(clash.use.activity, true, clash.use.map ?? zero, clash.use.next)]];
    if (clash.kind === 'lag') throw new Error('a lag between decided activities is broken after propagation');
    // Where it could start sooner in another mode, a start of what comes next that ends what is held says nothing yet.
    const next = clash.taken
      .map(({ use }) => use?.next ?? -1)
      .find((i) => i >= 0 && int(candidate.starts, i) > labels.earliestStart(i) && isUndecided(labels, i));
    if (next !== undefined) return modeBranches(labels, int(candidate.modes, next));
    return clash.taken.flatMap((one) => clash.taken.flatMap((other) => apart(one, other)));
  };

  /** Ways in which `one` is over before `other` starts; for itself: in which it takes up no time. */
  const apart = (one: Taken, other: Taken): Branch[] => {
    const i = one.activity;
    const j = other.activity;
    if (i === j && (one !== other || at(net.modes, int(candidate.modes, i)).slots.duration > 0)) return [];
    const ended = lag(i, true, zero, j);
    const map = one.use?.map ?? one.presence?.until;
    const over: NetLag[] = map === undefined ? [] : [lag(i, true, map, j)];
    const kind = one.use?.kind;
    if (kind === undefined || kind === holdKinds.none || kind === holdKinds.map) return [[ended, ...over]];
    const taken = lag(one.use?.next ?? j, false, zero, j);
    return kind === holdKinds.next
      ? [[ended, taken]]
      : [
          [ended, ...over],
          [ended, taken],
        ];
  };

  explore();
  return { done: !isSpent(), nodes };
}

function isUndecided(labels: Labels, i: number): boolean {
  let open = 0;
  for (let m = int(labels.net.modeFirst, i); m < int(labels.net.modeFirst, i + 1); m++) if (labels.isOpen(m)) open += 1;
  return open > 1;
}

function modeBranches(labels: Labels, m: number): Branch[] {
  return [{ decide: () => labels.choose(m) }, { decide: () => labels.close(m) }];
}

/** No schedule within the labels is cheaper. */
export function boundOf(labels: Labels): number {
  const { net } = labels;
  let bound = 0;
  for (let i = 0; i < net.count; i++) {
    let least = Infinity;
    for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++)
      if (labels.isOpen(m)) least = Math.min(least, at(net.modes, m).cost);
    bound += least;
  }
  for (const term of net.problem.objective) bound += leastOf(term, net, labels);
  return bound;
}

/** Puts every activity at its earliest in the open mode that ends first, the cheaper of equals; answers the value. */
function fill(labels: Labels, candidate: Candidate): number {
  const { net } = labels;
  for (let i = 0; i < net.count; i++) {
    let best = -1;
    let bestEnd: Minute = Infinity;
    for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++) {
      if (!labels.isOpen(m)) continue;
      const end = at(net.modes, m).slots.end(labels.first(m));
      if (end > bestEnd || (end === bestEnd && at(net.modes, m).cost >= at(net.modes, best).cost)) continue;
      best = m;
      bestEnd = end;
    }
    candidate.modes[i] = best;
    candidate.starts[i] = labels.first(best);
    candidate.ends[i] = bestEnd;
  }
  let value = 0;
  for (let i = 0; i < net.count; i++) value += at(net.modes, int(candidate.modes, i)).cost;
  for (const term of net.problem.objective) value += valueAt(term, net, candidate);
  return value;
}

function valueAt(term: Term, net: Net, candidate: Candidate): number {
  const i = term.activity;
  return termValue(term, net.problem.from, int(candidate.starts, i), int(candidate.ends, i));
}

/** Branches at a candidate that keeps every rule but is dearer than its node's bound. */
function narrowing(labels: Labels, candidate: Candidate): Branch[] {
  const { net } = labels;
  for (const term of net.problem.objective) {
    const i = term.activity;
    if (valueAt(term, net, candidate) <= leastOf(term, net, labels)) continue;
    if (isUndecided(labels, i)) return modeBranches(labels, int(candidate.modes, i));
    return halves(labels, i);
  }
  for (let i = 0; i < net.count; i++) if (isUndecided(labels, i)) return modeBranches(labels, int(candidate.modes, i));
  return [];
}

function halves(labels: Labels, i: number): Branch[] {
  const middle = Math.floor((labels.earliestStart(i) + labels.latestStart(i)) / 2);
  return [
    { decide: () => labels.startBy(i, middle, ownSlots) },
    { decide: () => labels.startFrom(i, middle + 1, ownSlots) },
  ];
}
