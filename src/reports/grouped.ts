/** The things by key, keys and things in their first order. */
export function grouped<K, T>(things: readonly T[], keyOf: (thing: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group === undefined) groups.set(keyOf(thing), [thing]);
    else group.push(thing);
  }
  return groups;
}
