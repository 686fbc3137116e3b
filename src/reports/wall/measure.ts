/** How a text is to be set. Sizes are in mm, like all lengths on paper here. */
export interface Type {
  readonly size: number;
  readonly bold?: boolean;
}

// Advance widths of U+0020 to U+007E in hundredths of an em, of the widest sans faces in common use. Measured: a page
// does not know which face its reader has, so text is laid out for the widest and never overlaps in a narrower one.
const REGULAR =
  '32 40 46 84 64 95 78 27 39 39 50 84 32 36 32 34 64 64 64 64 64 64 64 64 64 64 34 34 84 84 84 53 100 68 69 70 77 63 58 77 75 29 30 66 56 86 75 79 60 79 69 63 61 73 68 99 69 61 69 39 34 39 84 50 50 61 63 55 63 62 35 63 63 28 28 58 28 97 63 61 63 63 41 52 39 63 59 82 59 59 52 64 34 64 84';
const BOLD =
  '35 46 52 84 70 100 87 31 46 46 52 84 38 42 38 37 70 70 70 70 70 70 70 70 70 70 40 40 84 84 84 58 100 77 76 73 83 68 68 82 84 37 37 77 64 100 84 85 73 85 77 72 68 81 77 110 77 72 73 46 37 46 84 50 50 67 72 59 72 68 44 72 71 34 34 67 34 104 71 69 72 72 49 60 48 71 65 92 65 65 58 71 37 71 84';
const regular = REGULAR.split(' ').map((n) => Number(n) / 100);
const bold = BOLD.split(' ').map((n) => Number(n) / 100);

const nothing = /[\p{M}\p{Cf}]/u;
const picture = /\p{Extended_Pictographic}/u;
const fullWidth = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303f\uff00-\uff60]/u;
const lowerCase = /\p{Ll}/u;
const dash = /[–·…’‘]/u;

/** Width of one code point in em, rather too wide than too narrow. */
function emOf(point: string, widths: readonly number[]): number {
  const known = widths[(point.codePointAt(0) ?? 0) - 0x20];
  if (known !== undefined) return known;
  if (nothing.test(point)) return 0;
  if (picture.test(point)) return 1.4;
  if (fullWidth.test(point)) return 1.02;
  if (dash.test(point)) return point === '…' ? 1 : 0.5;
  return lowerCase.test(point) ? 0.78 : 0.9;
}

/** Width of `text` in mm, in the widest face that a reader may have. */
export function textWidth(text: string, type: Type): number {
  const widths = type.bold === true ? bold : regular;
  let em = 0;
  for (const point of text) em += emOf(point, widths);
  return em * type.size;
}

let segmenter: Intl.Segmenter | undefined;

function graphemes(text: string): string[] {
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), (s) => s.segment);
}

/** As much of `text` as fits `width`, with … for the rest. */
export function shortened(text: string, width: number, type: Type): string {
  if (textWidth(text, type) <= width) return text;
  let kept = '';
  for (const grapheme of graphemes(text)) {
    if (textWidth(`${kept}${grapheme}…`, type) > width) break;
    kept += grapheme;
  }
  return `${kept.trimEnd()}…`;
}

function broken(word: string, width: number, type: Type): string[] {
  if (textWidth(word, type) <= width) return [word];
  const parts = [''];
  for (const grapheme of graphemes(word)) {
    const longer = `${parts.at(-1) ?? ''}${grapheme}`;
    if (longer === grapheme || textWidth(longer, type) <= width) parts[parts.length - 1] = longer;
    else parts.push(grapheme);
  }
  return parts;
}

/** `text` over as many lines of `width` as it needs. */
export function wrapped(text: string, width: number, type: Type): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((w) => broken(w, width, type))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, type) <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/** The same in at most `most` lines; what does not fit ends in …. */
export function wrappedWithin(text: string, width: number, type: Type, most: number): string[] {
  const lines = wrapped(text, width, type);
  if (lines.length <= most) return lines;
  const rest = lines.slice(most - 1).join(' ');
  return [...lines.slice(0, most - 1), shortened(rest, width, type)];
}
