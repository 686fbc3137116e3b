import { LONGEST_QUANTITY } from './read.ts';

/** A number and the unit written after it; the unit is empty where none stands. */
export interface Amount {
  readonly value: number;
  readonly unit: string;
  /** The number as written. */
  readonly digits: string;
}

// Every part is bounded and none is nested: no text makes these slow.
const NUMBER = /^[+-]?\d{1,12}(?:\.\d{1,9})?/;
const FRACTION = /^(\d{1,4})\/(\d{1,4})/;

function leadingNumber(text: string): { readonly value: number; readonly length: number } | undefined {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [whole, top, bottom] = fraction;
    return Number(bottom) === 0 ? undefined : { value: Number(top) / Number(bottom), length: whole.length };
  }
  const number = NUMBER.exec(text)?.[0];
  if (number === undefined) return undefined;
  const rest = text.slice(number.length);
  const mixed = leadingFraction(rest);
  const sign = number.startsWith('-') ? -1 : 1;
  if (mixed !== undefined) return { value: Number(number) + sign * mixed.value, length: number.length + mixed.length };
  return { value: Number(number), length: number.length };
}

/** The `1/2` of `1 1/2 in`. */
function leadingFraction(rest: string): { readonly value: number; readonly length: number } | undefined {
  const spaces = rest.startsWith(' ') ? 1 : 0;
  const fraction = FRACTION.exec(rest.slice(spaces));
  if (spaces === 0 || fraction === null || Number(fraction[2]) === 0) return undefined;
  return { value: Number(fraction[1]) / Number(fraction[2]), length: spaces + fraction[0].length };
}

/** A unit runs up to the next space with a number behind it: `m2`, `sq ft`. */
function unitLength(text: string): number {
  const next = / [+-]?\d/.exec(text);
  return next === null ? text.length : next.index;
}

/** Splits `1 h 30 min`, `1/8 in`, `12 sq ft` into amounts; undefined where it is no such thing. */
export function amountsOf(written: string): readonly Amount[] | undefined {
  if (written.length > LONGEST_QUANTITY) return undefined;
  let text = written.trim().replaceAll(/\s/g, ' ').replaceAll('−', '-');
  const amounts: Amount[] = [];
  while (text !== '') {
    const number = leadingNumber(text);
    if (number === undefined) return undefined;
    const digits = text.slice(0, number.length);
    const rest = text.slice(number.length);
    const length = unitLength(rest);
    amounts.push({ value: number.value, unit: rest.slice(0, length).trim(), digits });
    text = rest.slice(length).trim();
  }
  return amounts.length === 0 ? undefined : amounts;
}
