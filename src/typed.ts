// One reader per kind of typed array: a shared one would see every kind and lose the quick path in the inner loops.

function missing(index: number): never {
  throw new RangeError(`no element at ${index}`);
}

/** `list[index]`, which must exist. */
export function int(list: Int32Array, index: number): number {
  return list[index] ?? missing(index);
}

/** `list[index]`, which must exist. */
export function byte(list: Uint8Array, index: number): number {
  return list[index] ?? missing(index);
}

/** `list[index]`, which must exist. */
export function real(list: Float64Array, index: number): number {
  return list[index] ?? missing(index);
}
