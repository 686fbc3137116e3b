/** The search's own random numbers: a 32-bit mixing generator, the same on every machine. */
export interface Random {
  /** A whole number from 0 up to, not including, `limit`. */
  below(limit: number): number;
  /** From 0 up to, not including, 1. */
  unit(): number;
}

/** Generator started by `seed`. */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return { unit: next, below: (limit) => Math.floor(next() * limit) };
}
