import type { Spread } from '../../model/mark.ts';
import { LONGEST_QUANTITY, read, refuse, type Read, type Reader } from './read.ts';
import { worded } from '../../words/worded.ts';

const BARE_NUMBER = /^[+-]?[\d./ ]{1,20}$/;

/** What stands behind the number: ` h` of `12 h`. */
function unitOf(text: string): string {
  const first = /[^\d./ +-]/.exec(text);
  return first === null ? '' : text.slice(first.index).trim();
}

/** The two sides of `4 h - 24 h`; a dash belongs to the number where a space stands before it and none behind. */
function sides(text: string): readonly [string, string] | undefined {
  for (const dash of [' - ', ' – ', ' to ']) {
    const index = text.indexOf(dash);
    if (index > 0) return [text.slice(0, index).trim(), text.slice(index + dash.length).trim()];
  }
  const index = text.slice(1).search(/[-–]/);
  return index < 0 ? undefined : [text.slice(0, index + 1).trim(), text.slice(index + 2).trim()];
}

/** `10 °C - 32 °C`, `4 - 24 h`: a low and a high value, in that order; `unit` is for numbers that have none. */
export function readRange(text: string, one: Reader<number>, unit = ''): Read<{ low: number; high: number }> {
  const write = worded`write a low and a high value with a dash between, like 4 h - 24 h`;
  if (text.length > LONGEST_QUANTITY) return refuse(worded`is not a range`, write);
  const parts = sides(text.trim());
  if (parts === undefined) return refuse(worded`is not a range`, write);
  const [lowText, highText] = parts;
  const withUnit = (side: string, other: string) =>
    BARE_NUMBER.test(side) ? `${side} ${unitOf(other) || unit}`.trim() : side;
  const low = one(withUnit(lowText, highText));
  if (!low.ok) return low;
  const high = one(withUnit(highText, lowText));
  if (!high.ok) return high;
  if (low.value > high.value)
    return refuse(worded`runs from ${lowText} down to ${highText}`, worded`write the lower value first`);
  return read({ low: low.value, high: high.value });
}

/** `12 h [4 h - 24 h]`: a typical value and its range; `12 h` alone has no spread. */
export function readSpread(text: string, one: Reader<number>): Read<Spread> {
  const write = worded`write a typical value and its range, like 12 h [4 h - 24 h]`;
  if (text.length > LONGEST_QUANTITY) return refuse(worded`is too long`, write);
  const open = text.indexOf('[');
  const head = (open < 0 ? text : text.slice(0, open)).trim();
  const typical = one(head);
  if (!typical.ok) return typical;
  if (open < 0) return read({ low: typical.value, typical: typical.value, high: typical.value });
  const rest = text.slice(open + 1).trim();
  if (!rest.endsWith(']')) return refuse(worded`has no closing bracket`, write);
  const range = readRange(rest.slice(0, -1), one, unitOf(head));
  if (!range.ok) return range;
  return spreadOf(range.value.low, typical.value, range.value.high);
}

/** The three values in order, or what is out of order. */
export function spreadOf(low: number, typical: number, high: number): Read<Spread> {
  if (low > typical || typical > high)
    return refuse(
      worded`has its typical value outside its range`,
      worded`the typical value lies between the low and the high one`,
    );
  return read({ low, typical, high });
}
