import { get } from './ints.ts';
import { guardValue, NO_GUARD } from './links.ts';
import type { Links } from './links.ts';
import { explainProfile } from './profile.ts';
import type { Profile } from './profile.ts';
import {
  addConflict,
  BOUND,
  BY_ARC,
  BY_CLAUSE,
  BY_GUARD,
  BY_NOTE,
  BY_PROFILE,
  CLAUSE_HEAD,
  DETAIL,
  EXTRA,
  REASON,
  TRAIL_WIDTH,
} from './store.ts';
import type { Store } from './store.ts';

/** Adds to `conflict` the facts because of which the rise at `place` of the trail reached at least `value`. */
export function explain(s: Store, links: Links, profile: Profile, place: number, value: number): void {
  const at = place * TRAIL_WIDTH;
  const bound = get(s.trail, at + BOUND);
  const detail = get(s.trail, at + DETAIL);
  switch (get(s.trail, at + REASON)) {
    case BY_CLAUSE: {
      const { text } = s.clauses;
      text[detail + 2] = s.clauses.clock;
      const begin = detail + CLAUSE_HEAD;
      const end = begin + 2 * get(text, detail);
      for (let k = begin; k < end; k += 2) if (get(text, k) !== bound) addConflict(s, get(text, k) ^ 1, 1 - get(text, k + 1));
      return;
    }
    case BY_ARC: {
      addConflict(s, get(links.source, detail), value - get(links.weight, detail));
      const guard = get(links.guard, detail);
      if (guard !== NO_GUARD) addConflict(s, guard, guardValue(guard));
      return;
    }
    case BY_GUARD: {
      const source = get(s.trail, at + EXTRA);
      addConflict(s, get(links.source, detail), source);
      addConflict(s, get(links.target, detail) ^ 1, 1 - get(links.weight, detail) - source);
      return;
    }
    case BY_PROFILE:
      explainProfile(s, profile, bound, value, detail);
      return;
    case BY_NOTE: {
      const count = get(s.notes, detail);
      for (let k = detail + 1; k <= detail + count; k += 2) addConflict(s, get(s.notes, k), get(s.notes, k + 1));
      return;
    }
    default:
      throw new Error('a choice has no reason');
  }
}
