import { at } from '../../at.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Term } from '../problem.ts';
import type { Structure } from '../structure.ts';
import { int, real } from '../../typed.ts';
import type { Market } from './market.ts';

/** A schedule known: by activity its start and its mode, numbered through; and what it costs. */
export interface Known {
  readonly starts: Int32Array;
  readonly modes: Int32Array;
  readonly value: number;
}

/** A resource counts as scarce if it is busy for this share of what the busiest is. */
const scarce = 0.7;

/**
 * Prices to begin with, for the scarce resources of a schedule known: as if these were one machine that works off
 * component after component, in the order in which they end. A minute of it is then worth what all the components still to
 * come would lose by coming later: the sum of weight for work over them (the dual of Smith's rule; Queyranne,
 * Mathematical Programming 58, 1993; from memory).
 */
export function firstPrices(
  net: Net,
  labels: Labels,
  { components }: Structure,
  terms: readonly (readonly Term[])[],
  market: Market,
  known: Known,
): Float64Array[] {
  const { grid, capacity } = market;
  const used = new Float64Array(capacity.length);
  const work = components.map(() => new Float64Array(capacity.length));
  const ends = components.map((members, c) => {
    let end = -Infinity;
    for (const i of members) {
      const { slots, uses } = at(net.modes, int(known.modes, i));
      end = Math.max(end, slots.end(int(known.starts, i)));
      for (const { resource, units } of uses) {
        const minutes = units * slots.duration;
        used[resource] = real(used, resource) + minutes;
        const own = at(work, c);
        own[resource] = real(own, resource) + minutes;
      }
    }
    return end;
  });
  const shares = used.map((minutes, r) => {
    const open = at(market.minutes, r).reduce((sum, length) => sum + length, 0) * int(capacity, r);
    return open === 0 ? 0 : minutes / open;
  });
  const most = shares.reduce((top, share) => Math.max(top, share), 0);
  const isScarce = (r: number): boolean => real(shares, r) >= scarce * most && most > 0;
  const pooled = capacity.reduce((sum, units, r) => sum + (isScarce(r) ? units : 0), 0);
  const workOf = components.map((_, c) =>
    at(work, c).reduce((sum, minutes, r) => sum + (isScarce(r) ? minutes : 0), 0),
  );
  const total = workOf.reduce((sum, minutes) => sum + minutes, 0);
  const weightOf = components.map((members) =>
    members.reduce((sum, i) => at(terms, i).reduce((s, term) => s + minuteWeight(labels, term), sum), 0),
  );
  const order = components.map((_, c) => c).sort((a, b) => at(ends, a) - at(ends, b) || a - b);
  // From the last component back: what a minute is worth while each is worked on.
  const length = grid.to - grid.from;
  const lambda = new Float64Array(grid.count);
  let done = total;
  let worth = 0;
  let b = grid.count - 2;
  for (const c of order.reverse()) {
    const own = at(workOf, c);
    if (own === 0) continue;
    const begins = grid.from + (length * (done - own)) / total;
    const finishes = grid.from + (length * done) / total;
    const slope = at(weightOf, c) / own;
    for (; b >= 0; b--) {
      const middle = (int(grid.edges, b) + int(grid.edges, b + 1)) / 2;
      if (middle < begins) break;
      lambda[b] = worth + slope * (finishes - middle);
    }
    worth += slope * (finishes - begins);
    done -= own;
  }
  return market.prices.map((_, r) => (isScarce(r) && pooled > 0 ? lambda.slice() : new Float64Array(grid.count)));
}

/** What every minute more costs by `term`, from the earliest end on. */
function minuteWeight(labels: Labels, term: Term): number {
  const late = term.kind === 'late' && term.due <= labels.earliestEnd(term.activity);
  return term.kind === 'end' || late ? term.weight : 0;
}
