import { CannotGoOn } from './call.ts';

/** One of a fixed list of words, or the beginning of one. */
export function wordOf<W extends string>(what: string, typed: string, words: readonly W[]): W {
  const found = words.filter((w) => w === typed).concat(words.filter((w) => w.startsWith(typed.toLowerCase())));
  const [first] = found;
  if (first !== undefined && new Set(found).size === 1) return first;
  throw new CannotGoOn(`"${typed}" is no ${what}`, `write one of ${words.join(', ')}`);
}
