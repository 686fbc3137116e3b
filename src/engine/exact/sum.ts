import { int } from '../../typed.ts';
import { BY_NOTE, high, note, raise } from './store.ts';
import type { Store } from './store.ts';

/** `total >= sum of weight[k] × variable[k]`, all weights above 0. */
export interface Sum {
  readonly total: number;
  readonly variable: Int32Array;
  readonly weight: Int32Array;
}

/** Raises the total to what its parts cost at least, and holds each part to what the total leaves for it. */
export function followSum(s: Store, sum: Sum): boolean {
  const { variable, weight, total } = sum;
  let least = 0;
  for (let k = 0; k < variable.length; k++) least += int(weight, k) * int(s.value, 2 * int(variable, k));
  if (least > int(s.value, 2 * total) && !raise(s, 2 * total, least, BY_NOTE, noteParts(s, sum, -1), 0)) return false;
  const room = high(s, total) - least;
  for (let k = 0; k < variable.length; k++) {
    const x = int(variable, k);
    const most = int(s.value, 2 * x) + Math.floor(room / int(weight, k));
    if (most < high(s, x) && !raise(s, 2 * x + 1, -most, BY_NOTE, noteParts(s, sum, k), 0)) return false;
  }
  return true;
}

/** Reason: [count of numbers, facts …]: the lower bounds of all parts but one, whose place the total's limit takes. */
function noteParts(s: Store, sum: Sum, but: number): number {
  const place = note(s, 0);
  for (let k = 0; k < sum.variable.length; k++) {
    const bound = 2 * int(sum.variable, k);
    const value = int(s.value, bound);
    if (k === but || value <= int(s.root, bound)) continue;
    note(s, bound);
    note(s, value);
  }
  if (but >= 0) {
    note(s, 2 * sum.total + 1);
    note(s, int(s.value, 2 * sum.total + 1));
  }
  s.notes[place] = s.notesSize - place - 1;
  return place;
}
