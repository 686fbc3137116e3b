import type { Outcome } from '../engine/problem.ts';
import type { Agreed } from './session-problem.ts';

/** What came of planning with just these sessions. */
export interface Choice {
  readonly agreed: readonly Agreed[];
  readonly outcome: Outcome;
}

type Found = Extract<Outcome, { status: 'optimal' | 'feasible' }>;

/** Is there a plan in it? */
export function isFound(outcome: Outcome): outcome is Found {
  return outcome.status === 'optimal' || outcome.status === 'feasible';
}

/**
 * The cheapest of all `choices` that there are, and of what was `known` before. Every plan makes one of them: none is
 * cheaper than the lowest of their bounds, and there is none where each is proven impossible.
 */
export function cheapestOf(choices: readonly Choice[], known: Choice): Choice {
  const found = [known, ...choices].flatMap(({ agreed, outcome }) => (isFound(outcome) ? [{ agreed, outcome }] : []));
  const [first, ...rest] = found;
  const unsure = choices.find(({ outcome }) => outcome.status === 'unknown');
  if (first === undefined) return unsure ?? known;
  const best = rest.reduce((a, b) => (b.outcome.value < a.outcome.value ? b : a), first);
  const possible = choices.flatMap(({ outcome }) => (isFound(outcome) ? [outcome] : []));
  const least = (bounds: readonly number[]) => (unsure === undefined ? Math.min(...bounds) : 0);
  const before = isFound(known.outcome) ? known.outcome : undefined;
  const bound = Math.max(least(possible.map((o) => o.bound)), before?.bound ?? 0);
  const terms = best.outcome.terms.map(({ value }, k) => ({
    value,
    bound: Math.max(least(possible.map((o) => o.terms[k]?.bound ?? 0)), before?.terms[k]?.bound ?? 0),
  }));
  const { value } = best.outcome;
  const modes = {
    value: best.outcome.modes.value,
    bound: Math.max(least(possible.map((o) => o.modes.bound)), before?.modes.bound ?? 0),
  };
  return {
    agreed: best.agreed,
    outcome: { ...best.outcome, status: value === bound ? 'optimal' : 'feasible', bound, terms, modes },
  };
}
