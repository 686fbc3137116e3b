/** Numbers that only look random: the same seed gives the same row. */
export interface Deviates {
  /** Uniform over 0 (inclusive) to 1 (exclusive). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/** 32-bit state stepped by a Weyl constant and mixed by two multiplications; normals by Box and Muller 1958. */
export function deviates(seed: number): Deviates {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}
