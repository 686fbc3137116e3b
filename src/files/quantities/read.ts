/** What a text was read as; or why it could not be, and what to write instead. */
export type Read<T> = { readonly ok: true; readonly value: T } | Refused;

export interface Refused {
  readonly ok: false;
  readonly why: string;
  readonly write: string;
}

/** Reads one quantity from what a person wrote. Total: never throws, linear in the length of the text. */
export type Reader<T> = (text: string) => Read<T>;

/** No quantity is longer; longer text is refused before anything looks at it. */
export const LONGEST_QUANTITY = 64;

export function read<T>(value: T): Read<T> {
  return { ok: true, value };
}

export function refuse(why: string, write: string): Refused {
  return { ok: false, why, write };
}

/** The same reader with its value carried on. */
export function mapped<A, B>(reader: Reader<A>, change: (value: A) => B): Reader<B> {
  return (text) => {
    const was = reader(text);
    return was.ok ? read(change(was.value)) : was;
  };
}
