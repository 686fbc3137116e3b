import { CannotGoOn } from './call.ts';
import { worded } from '../words/worded.ts';

/** One of a fixed list of words, or the beginning of one. */
export function wordOf<W extends string>(what: string, typed: string, words: readonly W[]): W {
  const found = words.filter((w) => w === typed).concat(words.filter((w) => w.startsWith(typed.toLowerCase())));
  const [first] = found;
  if (first !== undefined && new Set(found).size === 1) return first;
  throw new CannotGoOn(worded`"${typed}" is no ${what}`, worded`write one of ${words.join(', ')}`);
}
