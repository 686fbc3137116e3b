function missing(index: number): never {
  throw new RangeError(`no element at ${index}`);
}

/** `list[index]`, which must exist: a missing element is a defect and throws. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index];
  if (value === undefined) return missing(index);
  return value;
}
