import { int } from '../../typed.ts';
import { roomFor } from './ints.ts';
import { BY_CLAUSE, cutOf, END_OF_CHAIN, raise } from './store.ts';
import type { Store } from './store.ts';

export const CLAUSE_HEAD = 6;
const NEXT = 3;

/** Keeps a clause of two facts or more; facts 0 and 1 are watched. Returns where it begins. */
export function addClause(s: Store, facts: Int32Array, size: number, spread: number): number {
  const { clauses } = s;
  const begin = clauses.textSize;
  clauses.text = roomFor(clauses.text, begin + CLAUSE_HEAD + 2 * size);
  const { text } = clauses;
  text[begin] = size;
  text[begin + 1] = spread;
  text[begin + 2] = clauses.clock;
  for (let k = 0; k < 2 * size; k++) text[begin + CLAUSE_HEAD + k] = int(facts, k);
  clauses.textSize = begin + CLAUSE_HEAD + 2 * size;
  clauses.learnt.push(begin);
  watch(s, begin);
  watch(s, begin + 1);
  return begin;
}

/** Hangs a clause into the chain of what makes its watched fact false. */
function watch(s: Store, link: number): void {
  const { text, chains } = s.clauses;
  const begin = link & ~1;
  const at = begin + CLAUSE_HEAD + 2 * (link & 1);
  const bound = int(text, at);
  const chain = 2 * cutOf(s, bound, int(text, at + 1)) + ((bound ^ 1) & 1);
  text[begin + NEXT + (link & 1)] = int(chains, chain);
  chains[chain] = link;
}

/** Works off the clauses watching a fact that the rise `old -> now` of `bound` has made false. */
export function followClauses(s: Store, bound: number, old: number, now: number): boolean {
  for (let value = old + 1; value <= now; value++)
    if (!followChain(s, 2 * cutOf(s, bound, value) + (bound & 1))) return false;
  return true;
}

function followChain(s: Store, chain: number): boolean {
  const { value, clauses } = s;
  const { text, chains } = clauses;
  let before = END_OF_CHAIN;
  let link = int(chains, chain);
  while (link !== END_OF_CHAIN) {
    const begin = link & ~1;
    const slot = link & 1;
    const next = int(text, begin + NEXT + slot);
    const other = begin + CLAUSE_HEAD + 2 * (1 - slot);
    const bound = int(text, other);
    const least = int(text, other + 1);
    if (int(value, bound) < least) {
      const end = begin + CLAUSE_HEAD + 2 * int(text, begin);
      let k = begin + CLAUSE_HEAD + 4;
      while (k < end && int(value, int(text, k) ^ 1) + int(text, k + 1) >= 1) k += 2;
      if (k < end) {
        if (before === END_OF_CHAIN) chains[chain] = next;
        else text[before] = next;
        const watched = begin + CLAUSE_HEAD + 2 * slot;
        const falseBound = int(text, watched);
        const falseValue = int(text, watched + 1);
        text[watched] = int(text, k);
        text[watched + 1] = int(text, k + 1);
        text[k] = falseBound;
        text[k + 1] = falseValue;
        watch(s, link);
        link = next;
        continue;
      }
      if (!raise(s, bound, least, BY_CLAUSE, begin, 0)) return false;
    }
    before = begin + NEXT + slot;
    link = next;
  }
  return true;
}

/** Forgets about half of the clauses: those that spread over many levels and were not used lately. At level 0 only. */
export function forgetClauses(s: Store): void {
  const { clauses, root } = s;
  const { text } = clauses;
  const useful = clauses.learnt.filter((begin) => {
    const end = begin + CLAUSE_HEAD + 2 * int(text, begin);
    for (let k = begin + CLAUSE_HEAD; k < end; k += 2) if (int(root, int(text, k)) >= int(text, k + 1)) return false;
    return true;
  });
  const tight = useful.filter((begin) => int(text, begin + 1) <= TIGHT);
  const loose = useful.filter((begin) => int(text, begin + 1) > TIGHT);
  loose.sort((a, b) => int(text, b + 2) - int(text, a + 2) || b - a);
  const kept = [...tight, ...loose.slice(0, loose.length >> 1)].sort((a, b) => a - b);
  clauses.learnt = [];
  clauses.textSize = 0;
  clauses.chains.fill(END_OF_CHAIN);
  for (const begin of kept) {
    const length = CLAUSE_HEAD + 2 * int(text, begin);
    text.copyWithin(clauses.textSize, begin, begin + length);
    clauses.learnt.push(clauses.textSize);
    watch(s, clauses.textSize);
    watch(s, clauses.textSize + 1);
    clauses.textSize += length;
  }
}

/** Clauses that spread over this few levels are kept for good. */
const TIGHT = 2;
