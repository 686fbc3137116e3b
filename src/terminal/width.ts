import { eastAsianWidth } from 'get-east-asian-width';

// One column each, whatever the terminal: Latin, and the dashes, dots, quotes and blocks that we print ourselves.
const plainLetters = /^[\x20-\x7e\u00a0-\u02ff\u2010-\u2027\u2030-\u205e\u2190-\u21ff\u2500-\u259f]*$/u;
const marksOnly = /^\p{M}+$/u;
const pairOfTwo = /\ufe0f|^[\u{1f1e6}-\u{1f1ff}]{2}$/u;

let segmenter: Intl.Segmenter | undefined;

/** `text` as what a reader takes for single characters. */
export function graphemes(text: string): string[] {
  if (plainLetters.test(text)) return Array.from(text);
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), (s) => s.segment);
}

/** Columns that `text` takes on a terminal. It must be harmless and without colour. */
export function widthOf(text: string): number {
  if (plainLetters.test(text)) return text.length;
  return graphemes(text).reduce((sum, g) => sum + graphemeWidth(g), 0);
}

function graphemeWidth(grapheme: string): number {
  if (marksOnly.test(grapheme)) return 0;
  if (pairOfTwo.test(grapheme)) return 2;
  return eastAsianWidth(grapheme.codePointAt(0) ?? 0);
}
