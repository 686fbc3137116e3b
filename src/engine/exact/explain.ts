import { int } from '../../typed.ts';
import { guardOf, guardValue, NO_GUARD, sourceOf, targetOf, weightOf } from './links.ts';
import type { Links } from './links.ts';
import { explainProfile } from './profile-reasons.ts';
import type { Profile } from './profile.ts';
import { CLAUSE_HEAD } from './clauses.ts';
import {
  addConflict,
  BOUND,
  BY_ARC,
  BY_CLAUSE,
  BY_GUARD,
  BY_NOTE,
  BY_PROFILE,
  DETAIL,
  EXTRA,
  REASON,
  TRAIL_WIDTH,
} from './store.ts';
import type { Store } from './store.ts';

/** Adds to `conflict` the facts because of which the rise at `place` of the trail reached at least `value`. */
export function explain(s: Store, links: Links, profile: Profile, place: number, value: number): void {
  const at = place * TRAIL_WIDTH;
  const bound = int(s.trail, at + BOUND);
  const detail = int(s.trail, at + DETAIL);
  switch (int(s.trail, at + REASON)) {
    case BY_CLAUSE: {
      const { text } = s.clauses;
      text[detail + 2] = s.clauses.clock;
      const begin = detail + CLAUSE_HEAD;
      const end = begin + 2 * int(text, detail);
      for (let k = begin; k < end; k += 2)
        if (int(text, k) !== bound) addConflict(s, int(text, k) ^ 1, 1 - int(text, k + 1));
      return;
    }
    case BY_ARC: {
      addConflict(s, sourceOf(links, detail), value - weightOf(links, detail));
      const guard = guardOf(links, detail);
      if (guard !== NO_GUARD) addConflict(s, guard, guardValue(guard));
      return;
    }
    case BY_GUARD: {
      const source = int(s.trail, at + EXTRA);
      addConflict(s, sourceOf(links, detail), source);
      addConflict(s, targetOf(links, detail) ^ 1, 1 - weightOf(links, detail) - source);
      return;
    }
    case BY_PROFILE:
      explainProfile(s, profile, bound, value, detail);
      return;
    case BY_NOTE: {
      const count = int(s.notes, detail);
      for (let k = detail + 1; k <= detail + count; k += 2) addConflict(s, int(s.notes, k), int(s.notes, k + 1));
      return;
    }
    default:
      throw new Error('a choice has no reason');
  }
}
