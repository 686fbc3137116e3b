import type { Mark } from '../model/mark.ts';
import type { Family, Material } from '../model/material.ts';
import { stackRule } from '../model/stack-rule.ts';

/** Two films that do not simply go together. */
export interface StackProblem {
  /** Material ids. */
  readonly lower: string;
  readonly upper: string;
  /** `no`: not at all; `after`: only once the lower film has reached `mark`. */
  readonly verdict: 'no' | 'after';
  readonly mark?: Mark;
  /** Material id of a coat between the two that makes it possible. */
  readonly barrier?: string;
  readonly why: string;
}

/** These lie in the wood or come off again, so that the film over them meets what is beneath. */
const notAFilm: readonly Family[] = ['cleaner', 'tape', 'filler', 'glue'];

/**
 * Goes through the films of a section, the lowest first, and says which of two neighbours do not go together, or not
 * before a mark. Fillers, glue, cleaners and tape are looked past. A barrier coat is a film like any other: with it in
 * place the pair is no longer neighbours.
 */
export function stackProblems(films: readonly Material[]): readonly StackProblem[] {
  const coats = films.filter((film) => !notAFilm.includes(film.family));
  return coats.slice(1).flatMap((upper, i) => {
    const lower = coats[i];
    const rule = lower === undefined ? undefined : stackRule(lower, upper);
    if (lower === undefined || rule === undefined) return [];
    return [
      {
        lower: lower.id,
        upper: upper.id,
        verdict: rule.verdict,
        why: rule.why,
        ...(rule.mark === undefined ? {} : { mark: rule.mark }),
        ...(rule.barrier === undefined ? {} : { barrier: rule.barrier }),
      },
    ];
  });
}

/** May `barrier` go between the two, as it stands with either of them? */
export function bridges(lower: Material, barrier: Material, upper: Material): boolean {
  const refused = (a: Material, b: Material): boolean => stackRule(a, b)?.verdict === 'no';
  return !refused(lower, barrier) && !refused(barrier, upper);
}
