import { int } from '../../typed.ts';

/** `list`, or a copy at least twice as long if it has no room for `length` numbers. */
export function roomFor(list: Int32Array, length: number): Int32Array {
  if (length <= list.length) return list;
  const longer = new Int32Array(Math.max(length, 2 * list.length, 16));
  longer.set(list);
  return longer;
}

/** Lists of numbers laid end to end: list `i` is `items[first[i]] .. items[first[i + 1] - 1]`. */
export interface Rows {
  readonly first: Int32Array;
  readonly items: Int32Array;
}

/** Groups 0 .. keys.length - 1 by their key (0 .. rows - 1), in order. */
export function groupBy(keys: Int32Array, rows: number): Rows {
  const first = new Int32Array(rows + 1);
  for (const key of keys) first[key + 1] = int(first, key + 1) + 1;
  for (let i = 0; i < rows; i++) first[i + 1] = int(first, i + 1) + int(first, i);
  const next = first.slice();
  const items = new Int32Array(keys.length);
  keys.forEach((key, i) => {
    const place = int(next, key);
    items[place] = i;
    next[key] = place + 1;
  });
  return { first, items };
}
