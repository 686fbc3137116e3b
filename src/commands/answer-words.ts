import { translated } from '../words/worded.ts';

const MARKS = /\p{M}/gu;

/** In small letters, without accents: not every keyboard has them. */
function bare(text: string): string {
  return text.trim().normalize('NFD').replaceAll(MARKS, '').toLowerCase();
}

/** Does an answer say that word: in English, as files and options have it, or in the language that is spoken? */
export function isWord(text: string, word: string): boolean {
  return [word, translated(word)].some((said) => bare(said) === bare(text));
}

/** The same, or its first letter alone. */
export function isWordOrLetter(text: string, word: string): boolean {
  return (
    isWord(text, word) ||
    [word, translated(word)].some((said) => bare(said).startsWith(bare(text)) && bare(text).length === 1)
  );
}
