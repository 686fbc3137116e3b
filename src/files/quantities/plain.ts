import { read, refuse, type Read, type Reader } from './read.ts';
import { worded } from '../../words/worded.ts';

export function readYesNo(text: string): Read<boolean> {
  if (text === 'yes' || text === 'true') return read(true);
  if (text === 'no' || text === 'false') return read(false);
  return refuse(worded`is neither yes nor no`, worded`write yes or no`);
}

/** A whole number from `least` to `most`, in plain digits: no `010`, `0x1F`, `1e3` to be misread. */
export function wholeReader(least: number, most: number): Reader<number> {
  return (text) => {
    const write = worded`write a whole number from ${least} to ${most}`;
    if (!/^(?:0|[1-9]\d{0,8})$/.test(text)) return refuse(worded`is not a whole number`, write);
    const value = Number(text);
    return value < least || value > most ? refuse(worded`lies outside ${least} to ${most}`, write) : read(value);
  };
}

/** A decimal number from `least` to `most`, in plain digits. */
export function decimalReader(least: number, most: number): Reader<number> {
  return (text) => {
    const write = worded`write a number from ${least} to ${most}, like 1.2`;
    if (!/^(?:0|[1-9]\d{0,8})(?:\.\d{1,9})?$/.test(text)) return refuse(worded`is not a plain number`, write);
    const value = Number(text);
    return value < least || value > most ? refuse(worded`lies outside ${least} to ${most}`, write) : read(value);
  };
}

const LONGEST_ID = 40;
// Each is an own property of nothing and a property of everything: never a key of a table.
const FORBIDDEN = ['__proto__', 'constructor', 'prototype'];

export function isForbiddenName(name: string): boolean {
  return FORBIDDEN.includes(name);
}

/** An id: lower-case letters and digits in words joined by hyphens, at most 40 characters. */
export function readId(text: string): Read<string> {
  const write = worded`write lower-case letters and digits joined by hyphens, like front-door, at most 40 of them`;
  if (text.length > LONGEST_ID) return refuse(worded`is too long for an id`, write);
  if (isForbiddenName(text)) return refuse(worded`cannot be an id`, worded`choose another word`);
  if (!/^[a-z0-9-]+$/.test(text) || text.startsWith('-') || text.endsWith('-') || text.includes('--'))
    return refuse(worded`is not an id`, write);
  return read(text);
}
