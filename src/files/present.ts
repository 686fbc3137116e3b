type Optional<T> = { [K in keyof T]: undefined extends T[K] ? K : never }[keyof T];

/** `T` with each field that may be undefined turned into one that may be absent. */
export type Present<T> = { [K in Exclude<keyof T, Optional<T>>]: T[K] } & {
  [K in Optional<T>]?: Exclude<T[K], undefined>;
};

/** The same object without the fields that are undefined. */
export function present<T extends object>(fields: T): Present<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Present<T>;
}
