/** `work`, done once for each thing and what is asked of it, told apart by its key; remembered for as long as the thing is. */
export function oncePer<Thing extends object, Asked, Made>(
  work: (thing: Thing, asked: Asked) => Made,
  keyOf: (asked: Asked) => unknown = (asked) => asked,
): (thing: Thing, asked: Asked) => Made {
  const known = new WeakMap<Thing, Map<unknown, Made>>();
  return (thing, asked) => {
    let ofThing = known.get(thing);
    if (ofThing === undefined) known.set(thing, (ofThing = new Map<unknown, Made>()));
    const key = keyOf(asked);
    let made = ofThing.get(key);
    if (made === undefined) ofThing.set(key, (made = work(thing, asked)));
    return made;
  };
}

/** The same for what two things are to one another. */
export function oncePerPair<One extends object, Other extends object, Asked, Made>(
  work: (one: One, other: Other, asked: Asked) => Made,
): (one: One, other: Other, asked: Asked) => Made {
  const known = new WeakMap<One, (other: Other, asked: Asked) => Made>();
  return (one, other, asked) => {
    let ofOne = known.get(one);
    if (ofOne === undefined) known.set(one, (ofOne = oncePer((of: Other, what: Asked) => work(one, of, what))));
    return ofOne(other, asked);
  };
}

/** Worked out when first asked for. */
export function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => (known ??= { value: work() }).value;
}
